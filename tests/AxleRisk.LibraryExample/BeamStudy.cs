using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.LibraryExample;

/// <summary>The failure probability of a beam, which is no axle.</summary>
public static class BeamStudy
{
    public static Scenario Beam(DamageModel model) => Scenario.Of(
        model, "A beam", requiredKm: 100_000,
        [
            new("beam.load_kn", BeamModel.Load, null, Varies(8, 0.1), false),
            new("beam.arm_m", BeamModel.Arm, null, new Value.Certain(0.5), false),
            new("beam.modulus_cm3", BeamModel.Modulus, null, Varies(60, 0.05), false),
            new("legs.flat.cycles_per_km", BeamModel.Cycles, 0, new Value.Certain(20), false),
            new("legs.hilly.cycles_per_km", BeamModel.Cycles, 1, new Value.Certain(100), false),
            new("fatigue.miner_sum", Quantities.MinerSum, null, Varies(1, 0.3), false),
            new(
                "fatigue.log10_life_scatter", Quantities.LifeScatter, null, new Value.Uncertain(new Normal(0, 0.2), Knowledge.Varies), false),
        ],
        new Leg("flat", null, 0.75), new Leg("hilly", null, 0.25));

    public static void Run(TextWriter output)
    {
        var model = new LifeModel(Beam(new BeamModel()));
        (RiskResult risk, _) = RiskAnalysis.Run(
            model, RiskAnalysis.UsualSettings(model), RiskAnalysis.UsualQuestion(model), new RunOptions());
        Interval p = risk.AtRequired.Probability;
        output.WriteLine($"{100 * p.Estimate:0.00} % ({100 * p.Low:0.00} to {100 * p.High:0.00}) of the beams fail by {risk.RequiredKm:#,0} km");
    }

    private static Value.Uncertain Varies(double median, double sd) => new(new Lognormal(median, sd), Knowledge.Varies);
}
