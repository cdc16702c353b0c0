using AxleRisk.Core.Numerics;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>A two-level sample: what is left to chance in each vehicle, and what its owner drives.</summary>
/// <param name="Plan">How the sample is divided.</param>
/// <param name="Vehicles">The vehicles.</param>
/// <param name="LnKmPerYear">ln km driven in a year by outer draw and vehicle; empty where nobody asked.</param>
/// <param name="Threads">Threads that sums may use; no digit depends on them.</param>
internal sealed record FleetSample(NestedPlan Plan, FleetVehicles Vehicles, double[][] LnKmPerYear, int Threads = 1)
{
    private const double MonthsPerYear = 12;

    /// <summary>The probability of failing by a distance, for each outer draw.</summary>
    public DrawMeans FailedBy(double km)
    {
        double lnKm = Math.Log(km);
        return EachFailed(1, (_, _, _, ends) => ends.Fill(lnKm))[0];
    }

    /// <summary>The probability of failing by an age and within a distance, whichever comes first, for each outer draw.</summary>
    public DrawMeans FailedWithin(double months, double km) => FailedWithin([months], km)[0];

    /// <summary>The same by several ages.</summary>
    public DrawMeans[] FailedWithin(IReadOnlyList<double> months, double km)
    {
        double[] lnYears = [.. months.Select(m => Math.Log(m / MonthsPerYear))];
        double lnKm = Math.Log(km);
        return EachFailed(lnYears.Length, (age, draw, first, ends) =>
        {
            for (int i = 0; i < ends.Length; i++)
            {
                ends[i] = Math.Min(LnKmPerYear[draw][first + i] + lnYears[age], lnKm);
            }
        });
    }

    /// <summary>The share of the vehicles whose warranty is ended by its distance rather than by its age.</summary>
    public double EndedByDistance(double months, double km)
    {
        double lnEnd = Math.Log(km) - Math.Log(months / MonthsPerYear);
        DrawMeans shares = EachDraw(1, () => (_, draw, first, ended) =>
        {
            for (int i = 0; i < ended.Length; i++)
            {
                ended[i] = LnKmPerYear[draw][first + i] > lnEnd ? 1 : 0;
            }
        })[0];
        return DrawStatistic.Of(shares, TargetBasis.Average);
    }

    // Where each vehicle is asked about, as the logarithm of a distance, goes in; whether it has failed there comes out.
    private DrawMeans[] EachFailed(int questions, OfVehicles fillLnKm) => EachDraw(questions, () =>
    {
        FleetVehicles.Reader read = Vehicles.CreateReader();
        double[] lnKm = new double[FleetVehicles.MostAtOnce];
        return (question, draw, first, failed) =>
        {
            Span<double> ends = lnKm.AsSpan(0, failed.Length);
            fillLnKm(question, draw, first, ends);
            read(draw, first, ends, failed);
        };
    });

    // Each draw has one place and one order of summing: no digit depends on the threads. All questions about some vehicles come together.
    private DrawMeans[] EachDraw(int questions, Func<OfVehicles> createOfThread)
    {
        double[][][] means = [.. Enumerable.Range(0, questions).Select(_ => Workspace.Columns(Plan.Parts, Plan.Draws))];
        var options = new ParallelOptions { MaxDegreeOfParallelism = Threads };
        Parallel.For(0, Plan.Draws, options, () => (Fill: createOfThread(), Of: new double[FleetVehicles.MostAtOnce]), (draw, _, thread) =>
        {
            var sums = new CompensatedSum[questions];
            for (int part = 0; part < Plan.Parts; part++)
            {
                Array.Clear(sums);
                (int first, int end) = (part * Plan.InnerOfPart, (part + 1) * Plan.InnerOfPart);
                for (; first < end; first += thread.Of.Length)
                {
                    Span<double> some = thread.Of.AsSpan(0, Math.Min(thread.Of.Length, end - first));
                    for (int question = 0; question < questions; question++)
                    {
                        thread.Fill(question, draw, first, some);
                        foreach (double one in some)
                        {
                            sums[question].Add(one);
                        }
                    }
                }

                for (int question = 0; question < questions; question++)
                {
                    means[question][part][draw] = sums[question].Value / Plan.InnerOfPart;
                }
            }

            return thread;
        }, _ => { });
        return [.. means.Select(m => new DrawMeans(m))];
    }

    private delegate void OfVehicles(int question, int draw, int first, Span<double> to);
}
