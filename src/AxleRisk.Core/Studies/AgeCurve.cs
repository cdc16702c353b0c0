using System.Runtime.Intrinsics;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Studies;

/// <summary>
/// A rate per km over distance, of a block of rows. Between the ages of an <see cref="AgeGrid"/> its logarithm is a cubic through
/// four of them, kept
/// between its ends and taken as straight over each step; beyond the last age the rate is constant. Five ages are within 0.05 %
/// of the integral up to
/// the required distance for a wall that loses up to 15 % of its thickness, within 0.6 % for a first yield whose rate rises
/// e^3-fold and 2.5 % where it
/// rises e^12-fold; at five times that distance within 11 %, 12 % and 48 % (the tests say so). A rate that becomes infinite, for
/// no wall is left, is taken
/// as unchanged up to where that is.
/// </summary>
internal sealed class AgeCurve : UsageCurve
{
    // Nothing that is this rare tells; its logarithm keeps a rate of 0 in the picture.
    private const double Least = 1e-30;

    private static readonly int Width = Vector512<double>.Count;

    private readonly AgeGrid ages;
    private readonly double[][] start;
    private readonly double[][] slope;
    private readonly double[][] used;
    private readonly double[][] logs;
    private double[]? endsKm;

    /// <summary>Room for <paramref name="capacity"/> rows.</summary>
    public AgeCurve(AgeGrid ages, int capacity)
    {
        this.ages = ages;
        int padded = PaddedTail.Padded(capacity);
        int steps = ages.StepKm.Length - 1;
        Rates = Workspace.Columns(ages.Km.Length, padded);
        start = Workspace.Columns(steps, padded);
        slope = Workspace.Columns(steps, padded);
        used = Workspace.Columns(steps + 1, padded);
        logs = Workspace.Columns(ages.Km.Length, padded);
    }

    /// <summary>The rates, by age and row: to be filled first.</summary>
    public double[][] Rates { get; }

    /// <summary>Takes over the rates of the first <paramref name="count"/> rows.</summary>
    /// <param name="count">Rows.</param>
    /// <param name="endsKm">Where each row's rate becomes infinite, km; null for nowhere.</param>
    public void Fill(int count, double[]? endsKm = null)
    {
        this.endsKm = endsKm;
        for (int row = 0; ages.Km.Length > 1 && row < count; row += Width)
        {
            for (int age = 0; age < logs.Length; age++)
            {
                VectorLogarithm.Of(Vector512.Max(At(Rates[age], row), Vector512.Create(Least))).CopyTo(logs[age], row);
            }

            for (int age = 0; age + 1 < logs.Length; age++)
            {
                FillSteps(age, row);
            }
        }
    }

    /// <summary>The integral of a row's rate from the first age to a distance that is not below it.</summary>
    public override double Used(int row, double km)
    {
        if (!(km > 0))
        {
            return 0;
        }

        int step = ages.StepOf(km);
        double rest = km - ages.StepKm[step];
        if (step == start.Length)
        {
            return Beyond(row, km) ? double.PositiveInfinity : used[step][row] + rest * Rates[^1][row];
        }

        double x = slope[step][row] * rest / Length(step);
        return Beyond(row, km) ? double.PositiveInfinity : used[step][row] + rest * start[step][row] * (x == 0 ? 1 : LogExp.ExpM1(x) / x);
    }

    /// <inheritdoc/>
    public override void FillUsed(int count, double km, Span<double> to)
    {
        if (!(km > 0))
        {
            to[..count].Clear();
            return;
        }

        int step = ages.StepOf(km);
        double rest = km - ages.StepKm[step];
        bool isLast = step == start.Length;
        double[] rate = isLast ? Rates[^1] : start[step];
        Span<double> lanes = stackalloc double[Width];
        for (int row = 0; row < count; row += Width)
        {
            Vector512<double> value = rest * At(rate, row);
            if (!isLast)
            {
                value *= Growth(At(slope[step], row) * (rest / Length(step)));
            }

            value += At(used[step], row);
            if (endsKm is not null)
            {
                value = Vector512.ConditionalSelect(Vector512.LessThan(At(endsKm, row), Vector512.Create(km)),
                    Vector512.Create(double.PositiveInfinity), value);
            }

            if (row + Width <= count)
            {
                value.CopyTo(to[row..]);
                continue;
            }

            value.CopyTo(lanes);
            lanes[..(count - row)].CopyTo(to[row..]);
        }
    }

    /// <summary>The distance at which the integral of a row's rate reaches a target above 0; infinite where it never does.</summary>
    public double Inverse(int row, double target)
    {
        double end = endsKm is null ? double.PositiveInfinity : Math.Max(ages.StepKm[0], endsKm[row]);
        int step = 0;
        while (step < start.Length && !(used[step + 1][row] >= target))
        {
            step++;
        }

        double from = ages.StepKm[step];
        double rate = step < start.Length ? start[step][row] : Rates[^1][row];
        double left = target - used[step][row];
        if (double.IsInfinity(rate))
        {
            return Math.Min(from, end);
        }

        double x = step < start.Length ? left * slope[step][row] / (rate * Length(step)) : 0;
        return Math.Min(end, from + left / rate * (Math.Abs(x) < 1e-300 ? 1 : LogExp.LogP1(x) / x));
    }

    /// <inheritdoc/>
    public override void FillInverse(int count, double[] targets, double[] km)
    {
        if (start.Length == 0 && endsKm is null && ages.StepKm[0] == 0)
        {
            VectorColumns.Quotient(targets.AsSpan(0, count), Rates[^1].AsSpan(0, count), km.AsSpan(0, count));
            return;
        }

        Vector512<double> one = Vector512<double>.One;
        for (int row = 0; row < count; row += Width)
        {
            Vector512<double> target = At(targets, row);
            Vector512<double> from = Vector512.Create(ages.StepKm[0]);
            Vector512<double> done = Vector512<double>.Zero;
            Vector512<double> rate = At(start.Length > 0 ? start[0] : Rates[^1], row);
            Vector512<double> growth = start.Length > 0 ? At(slope[0], row) * (1 / Length(0)) : Vector512<double>.Zero;
            for (int step = 1; step <= start.Length; step++)
            {
                // The last step that begins below the target.
                Vector512<double> here = At(used[step], row);
                Vector512<double> below = Vector512.LessThan(here, target);
                bool isLast = step == start.Length;
                from = Vector512.ConditionalSelect(below, Vector512.Create(ages.StepKm[step]), from);
                done = Vector512.ConditionalSelect(below, here, done);
                rate = Vector512.ConditionalSelect(below, At(isLast ? Rates[^1] : start[step], row), rate);
                growth = Vector512.ConditionalSelect(below, isLast ? Vector512<double>.Zero : At(slope[step], row) * (1 / Length(step)),
                    growth);
            }

            // rate (e^(growth x) - 1)/growth = target - done
            Vector512<double> flat = (target - done) / rate;
            Vector512<double> x = flat * growth;
            Vector512<double> rounded = one + x;
            Vector512<double> bent = flat * VectorLogarithm.Of(rounded) / (rounded - one); // ln(1 + x)/x by LogExp's device
            Vector512<double> isFlat = Vector512.Equals(rounded, one) | Vector512.Equals(growth, Vector512<double>.Zero);
            Vector512<double> life = from + Vector512.ConditionalSelect(isFlat, flat, bent);
            if (endsKm is not null)
            {
                life = Vector512.Min(life, Vector512.Max(At(endsKm, row), Vector512.Create(ages.StepKm[0])));
            }

            life.CopyTo(km, row);
        }
    }

    private bool Beyond(int row, double km) => endsKm is not null && km > endsKm[row];

    private double Length(int step) => ages.StepKm[step + 1] - ages.StepKm[step];

    // The steps between an age and the next.
    private void FillSteps(int age, int row)
    {
        Vector512<double> a = At(logs[age], row);
        Vector512<double> b = At(logs[age + 1], row);
        Vector512<double> low = Vector512.Min(a, b);
        Vector512<double> high = Vector512.Max(a, b);
        Vector512<double> finite = IsFinite(b - a);
        Vector512<double> sum = At(used[age * AgeGrid.Parts], row);
        (int near, int far) = Others(age);
        Vector512<double> bend = near < 0 ? Vector512<double>.Zero : Bend(age, near, row);
        Vector512<double> bendOfFar = far < 0 ? bend : Bend(age, far, row);
        Vector512<double> turn = bendOfFar - bend;
        turn = Vector512.ConditionalSelect(IsFinite(turn), turn, Vector512<double>.Zero);
        bend = Vector512.ConditionalSelect(IsFinite(bend), bend, Vector512<double>.Zero);
        Vector512<double> at = a;
        Vector512<double> rate = Vector512.Max(At(Rates[age], row), Vector512.Create(Least));
        for (int part = 0; part < AgeGrid.Parts; part++)
        {
            // Newton's form: the chord, and the bends that the third and the fourth age give.
            int step = age * AgeGrid.Parts + part;
            double s = (part + 1.0) / AgeGrid.Parts;
            double place = far < 0 ? 0 : (ages.StepKm[step + 1] - ages.Km[near]) / (ages.Km[far] - ages.Km[near]);
            Vector512<double> next = a + s * (b - a) + (s * (s - 1)) * (bend + place * turn);
            next = part + 1 == AgeGrid.Parts ? b : Vector512.Min(Vector512.Max(next, low), high);
            Vector512<double> rise = Vector512.ConditionalSelect(finite, next - at, Vector512<double>.Zero);
            Vector512<double> grown = VectorExponential.MinusOne(rise);
            rate.CopyTo(start[step], row);
            rise.CopyTo(slope[step], row);
            Vector512<double> flat = Vector512.Equals(rise, Vector512<double>.Zero);
            sum += Length(step) * rate * Vector512.ConditionalSelect(flat, Vector512<double>.One, grown / rise);
            sum.CopyTo(used[step + 1], row);
            rate = Vector512.ConditionalSelect(flat, rate, rate + rate * grown);
            at = next;
        }
    }

    // The third and the fourth age of the polynomial between an age and the next: the one before and the second next, or what
    // there is beyond; -1 for none.
    private (int Near, int Far) Others(int age)
    {
        int last = ages.Km.Length - 1;
        int near = age > 0 ? age - 1 : age + 2;
        int far = age > 0 && age + 2 <= last ? age + 2 : age > 0 ? age - 2 : age + 3;
        return (near > last ? -1 : near, far > last || far < 0 ? -1 : far);
    }

    // The second divided difference of the logarithm over an age, the next and a third, in units of the distance between the two.
    private Vector512<double> Bend(int age, int third, int row)
    {
        double length = ages.Km[age + 1] - ages.Km[age];
        Vector512<double> a = At(logs[age], row);
        Vector512<double> chord = (At(logs[age + 1], row) - a) / length;
        Vector512<double> other = (At(logs[third], row) - a) / (ages.Km[third] - ages.Km[age]);
        return (other - chord) * (length * length / (ages.Km[third] - ages.Km[age + 1]));
    }

    private static Vector512<double> IsFinite(Vector512<double> x) =>
        Vector512.LessThan(Vector512.Abs(x), Vector512.Create(double.MaxValue));

    // (e^x - 1)/x
    private static Vector512<double> Growth(Vector512<double> x) => Vector512.ConditionalSelect(
        Vector512.Equals(x, Vector512<double>.Zero), Vector512<double>.One, VectorExponential.MinusOne(x) / x);

    private static Vector512<double> At(double[] column, int row) => Vector512.LoadUnsafe(in column[row]);
}
