using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Rides;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.BaseCase;

/// <summary>The base case: everything at its nominal, then one factor at a time to its 5 % and 95 % points and by a tenth.</summary>
public static class BaseCaseAnalysis
{
    /// <summary>Runs the analysis; a handful of evaluations.</summary>
    public static BaseCaseResult Run(LifeModel model)
    {
        var vehicle = new OneVehicle(model);
        double medianLife = vehicle.LifeKm(f => f.Median);
        double life = vehicle.LifeKm(f => f.Nominal);
        double damage = vehicle.Workspace.DamagePerKm[0];
        ImmutableArray<double> shares = [.. vehicle.Workspace.DamageByLeg.Select(leg => leg[0] / damage)];
        Workspace told = vehicle.Workspace.Stretches is [.., var last] ? last : vehicle.Workspace;
        BaseAxle? axle = model.Scenario.Model is null
            ? Axle(model, vehicle, [.. told.DamageByLeg.Select(leg => leg[0] / told.DamagePerKm[0])]) : null;
        return new BaseCaseResult
        {
            LifeKm = life,
            MedianFactorsLifeKm = medianLife,
            DamagePerKm = damage,
            DamageShares = shares,
            Axle = axle,
            Depths = DepthsOf(model),
            Factors = [.. model.Factors.Factors.Where(f => f.Distribution is not null).Select(f => Vary(vehicle, f, life))
                .OrderByDescending(o => o.Pull)],
            Evaluations = vehicle.Evaluations,
        };
    }

    /// <summary>Life with every factor at its median, km.</summary>
    public static double MedianFactorsLifeKm(LifeModel model) => new OneVehicle(model).LifeKm(f => f.Median);

    /// <summary>The base case evaluated, in the first row of a workspace.</summary>
    internal static Workspace EvaluateNominal(LifeModel model)
    {
        var vehicle = new OneVehicle(model);
        vehicle.LifeKm(f => f.Nominal);
        return vehicle.Workspace;
    }

    private static ImmutableArray<(double Km, double Mm)> DepthsOf(LifeModel model)
    {
        if (model.Scenario.Crack is null)
        {
            return [];
        }

        Workspace of = EvaluateNominal(model);
        CrackDepth depth = new CrackModel(model).Nominal;
        return [.. CrackModel.TellAtKm(model.Scenario).Select(km => (km, depth.At(FailureChances.Used(0, of, 0, km) / of.Scale[0])))];
    }

    private static BaseAxle Axle(LifeModel model, OneVehicle vehicle, ImmutableArray<double> shares)
    {
        DamageColumns columns = vehicle.Workspace.Damage;
        LegDetail[] details = model.Axle.DetailsOfFirstRow(columns, strikes: true);
        RideParameters ride = columns.RideOf(0);
        return new BaseAxle
        {
            StressPerKnMPa = columns.StressPerForceMPaPerN[0] * 1000,
            BodyBounceHz = Ride.BodyBounceHz(ride),
            WheelHopHz = Ride.WheelHopHz(ride),
            Curve = DetailCurves.Nominal(model.Told.Scenario.Detail),
            Sections = [.. Sections(model.Told.Scenario, vehicle.Workspace)],
            Stretch = Stretches.Of(model.Scenario) is [.., var last] ? last.Place : null,
            Legs = [.. model.Scenario.Legs.Select((leg, i) => new BaseLeg(
                leg.Name, columns.Legs[i].Share[0], columns.Legs[i].SpeedMPerS[0] * 3.6, details[i].Plain.RmsMPa,
                details[i].Plain.UpCrossingsPerSecond, shares[i]))],

            // The ratio that multiplies a leg's damage multiplies that of its events.
            Events =
            [
                .. from e in vehicle.Events()
                   let driven = details[e.Leg].DamagePerKmOfUse + vehicle.Events().Where(o => o.Leg == e.Leg).Sum(o => o.DamagePerKm)
                   let share = e.DamagePerKm / driven
                   select new BaseEvent(model.Scenario.Legs[e.Leg].Name, e.Name, e.PerKm, share, share * shares[e.Leg]),
            ],
        };
    }

    private static IEnumerable<BaseSection> Sections(Scenario scenario, Workspace workspace)
    {
        LifeRates? rates = (workspace.Stretches is [.., var last] ? last : workspace).Rates;
        for (int place = 0; rates is not null && scenario.Sections.Length > 0 && place <= scenario.Sections.Length; place++)
        {
            CheckedSection? section = place == 0 ? null : scenario.Sections[place - 1];
            yield return new BaseSection(
                section?.Name ?? CheckedSection.First, workspace.Damage.Sections[place].StressPerForceMPaPerN[0] * 1000,
                DetailCurves.Nominal(section?.Detail ?? scenario.Detail), place == 0 ? rates.OfFatigue[0][0] : rates.FurtherAtAge[0][place - 1][0]);
        }
    }

    private static OneAtATime Vary(OneVehicle vehicle, Factor factor, double baseLife)
    {
        double Relative(double value) => vehicle.LifeKm(f => f == factor ? [value] : f.Nominal) / baseLife;
        (double low, double high) = factor switch
        {
            // A word has no 5 % point: the first and the last possible stand in.
            WordFactor w => (0, w.Words.Length - 1),
            _ => (factor.Distribution!.Quantile(0.05), factor.Distribution.Quantile(0.95)),
        };
        double nominal = factor.Nominal[0];
        double raised = nominal * 1.1;
        bool meaningful = factor is ScalarFactor s && nominal != 0 && s.Input.Quantity.Domain.Contains(raised);
        return new OneAtATime(factor, low, high, Relative(low), Relative(high), meaningful ? Relative(raised) : double.NaN);
    }

    /// <summary>Evaluates one row at a time.</summary>
    private sealed class OneVehicle(LifeModel model)
    {
        private readonly double[][] values = model.CreateColumns(1);

        public Workspace Workspace { get; } = model.CreateWorkspace(1);

        public int Evaluations { get; private set; }

        /// <summary>The events of what was evaluated last.</summary>
        public IEnumerable<(int Leg, string Name, double PerKm, double DamagePerKm)> Events() =>
            model.Axle.EventsOfFirstRow(values, Workspace.Damage);

        public double LifeKm(Func<Factor, ImmutableArray<double>> valuesOf)
        {
            foreach (Factor factor in model.Factors.Factors)
            {
                ImmutableArray<double> chosen = valuesOf(factor);
                for (int i = 0; i < chosen.Length; i++)
                {
                    values[factor.FirstColumn + i][0] = chosen[i];
                }
            }

            model.Evaluate(values, 1, Workspace);
            Evaluations++;
            return Workspace.LifeKm[0];
        }
    }
}
