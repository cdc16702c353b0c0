using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;

namespace AxleRisk.Core.Tests.Analyses.Learning;

/// <summary>
/// A scenario whose life is 200,000 km x exp(theta) x exp(v): theta, minus ln of an unknown damage ratio, is N(0, 0.5); v, the S-N
/// scatter that varies, is N(0, 0.45). Invented.
/// </summary>
internal static class LearnCase
{
    public const double MedianKm = 200_000, ThetaSd = 0.5, Sigma = 0.45;

    /// <summary>The damage ratio at theta 0.</summary>
    public static double Ratio { get; } = BaseCaseAnalysis.MedianFactorsLifeKm(new LifeModel(With(1, [], FieldData.None))) / MedianKm;

    /// <summary>The records of the check values.</summary>
    public static FieldData Field { get; } = new("returns.csv",
    [
        At(60_000, 2), At(85_000, 3), At(110_000, 4), Whole(40_000, 30, 5), Whole(80_000, 50, 6), Whole(120_000, 17, 7),
        new FieldRecord(70_000, 90_000, 2, "", [], 8), new FieldRecord(0, 50_000, 1, "", [], 9),
    ]);

    /// <summary>The scenario with records, and perhaps with further inputs in place of its own.</summary>
    public static LifeModel Model(FieldData field, params Input[] inputs) => new(With(Ratio, inputs, field));

    public static FieldRecord At(double km, int line) => new(km, km, 1, "", [], line);

    public static FieldRecord Whole(double km, double vehicles, int line) => new(km, double.PositiveInfinity, vehicles, "", [], line);

    private static Scenario With(double ratio, Input[] inputs, FieldData field) => LogLinear.Scenario with
    {
        RequiredKm = 100_000,
        Inputs = [.. LogLinear.Scenario.Inputs.Where(i => !inputs.Any(o => o.Name == i.Name)).Select(i =>
            i.Quantity == Quantities.DamageRatio
                ? i with { Value = new Value.Uncertain(new Lognormal(ratio, ThetaSd), Knowledge.Unknown) }
            : i.Quantity == Quantities.MinerSum ? i with { Value = new Value.Certain(1) }
            : i.Quantity == Quantities.LifeScatter
                ? i with { Value = new Value.Uncertain(new Normal(0, Sigma / Math.Log(10)), Knowledge.Varies) }
            : i), .. inputs],
        Field = field,
    };
}
