using AxleRisk.Core.Analyses.Ranking;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.LibraryExample;

/// <summary>How much failure each millimetre of wall saves, and what matters besides.</summary>
public static class WallStudy
{
    public static void Run(string path, TextWriter output)
    {
        Scenario scenario = ScenarioReader.ReadFile(path).Scenario;
        foreach (double wall in (double[])[4, 5, 6, 7])
        {
            var thicker = new Change.ToValue("axle.wall_mm", new Value.Certain(wall));
            var model = new LifeModel(thicker.ApplyTo(scenario));
            var settings = new StudySettings(8192, Seed: 1, RiskAnalysis.DefaultSampling(model));
            (RiskResult risk, _) = RiskAnalysis.Run(model, settings, new RiskQuestion(), new RunOptions());
            Interval p = risk.AtRequired.Probability;
            output.WriteLine($"wall {wall} mm: {100 * p.Estimate:0.0} % ({100 * p.Low:0.0} to {100 * p.High:0.0}) failed");
        }

        var stated = new LifeModel(scenario);
        RankResult rank = RankAnalysis.Run(stated, new StudySettings(20_000, 1, RiskAnalysis.DefaultSampling(stated)), new RunOptions());
        output.WriteLine($"what matters most: {rank.Factors[0].Factor.Label}");
    }
}
