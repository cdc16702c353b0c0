using AxleRisk.Core.Analyses.BaseCase;
using AxleRisk.Core.Analyses.Sweeps;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Core.Tests.Fixtures;
using Xunit;

namespace AxleRisk.Core.Tests.Studies;

/// <summary>What the weld lives in as a choice: a factor beside the category.</summary>
public sealed class EnvironmentTests
{
    private static readonly Detail Both = new("DNV-RP-C203", ["E", "F", "G"], [0.5, 0.3, 0.2])
    {
        Environment = new WordChoice(["air", "seawater with protection", "free corrosion"], [0.6, 0.1, 0.3]),
    };

    // Every vehicle has the damage that it would have if its own category and environment were certain.
    [Fact]
    public void Each_vehicle_has_the_curve_of_its_own_category_and_environment()
    {
        const int Rows = 150;
        var model = new LifeModel(FiveLegs.Scenario with { Detail = Both });
        Assert.Equal(["detail.category", "detail.environment"], model.Factors.ColumnNames[^2..].AsEnumerable());
        double[][] values = model.CreateColumns(Rows);
        Workspace workspace = model.CreateWorkspace(Rows);
        model.Draw(SamplingPlan.FromName("plain", Rows), 1, "", 0, Rows, workspace, values);
        model.Evaluate(values, Rows, workspace);
        double[] damage = workspace.DamagePerKm[..Rows];
        var seen = new HashSet<(int, int)>();
        for (int row = 0; row < Rows; row++)
        {
            (int category, int environment) = ((int)values[^2][row], (int)values[^1][row]);
            seen.Add((category, environment));
            var sure = new LifeModel(
                FiveLegs.Scenario with
                {
                    Detail = new Detail("DNV-RP-C203", [Both.Categories[category]], [1])
                    { Environment = WordChoice.Sure(Both.Environment!.Words[environment]) },
                },
                model.Factors);
            Workspace one = sure.CreateWorkspace(1);
            sure.Evaluate([.. values.Select(v => (double[])[v[row]])], 1, one);
            Assert.Equal(one.DamagePerKm[0], damage[row], 1e-4 * damage[row]);
        }

        Assert.Equal(9, seen.Count);
    }

    // The figures of docs/model.md: free corrosion takes the five-leg benchmark from 486,600 to 118,600 km. The median of 0.6, 0.1 and
    // 0.3 is air.
    [Fact]
    public void The_base_case_has_the_median_and_a_remedy_changes_it()
    {
        Scenario scenario = FiveLegs.Scenario with { Detail = Both };
        Scenario bare = Remedy.Apply(
            scenario, new("bare", null, [new Change.ToWord("detail.environment", WordChoice.Sure("free corrosion"))]));
        Assert.Equal(486_590, BaseCaseAnalysis.Run(new LifeModel(scenario)).LifeKm, 500.0);
        Assert.Equal(118_600, BaseCaseAnalysis.Run(new LifeModel(bare)).LifeKm, 50.0);
        Assert.Null(FactorSet.Of(bare).Find("detail.environment"));
    }

    [Fact]
    public void A_sweep_goes_through_the_catalogues_environments()
    {
        Assert.Equal(Both.Environment!.Words, SweptInput.Usual(FiveLegs.Scenario, "detail.environment").Points(FiveLegs.Scenario)
            .Select(v => v.Text));
        Scenario other = FiveLegs.Scenario with { Detail = new Detail("IIW", ["FAT 80"], [1]) };
        Assert.Equal(
            "IIW tells of air alone: detail.environment cannot be swept",
            Assert.Throws<StudyException>(() => SweptInput.Usual(other, "detail.environment")).Message);
    }
}
