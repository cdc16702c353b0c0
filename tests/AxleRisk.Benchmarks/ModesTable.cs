using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>What strikes, further modes of failure and ageing cost on one core, over the plain scenario.</summary>
internal static class ModesTable
{
    private static readonly Quantity[] Ageing = [Quantities.DamperWear, Quantities.CorrosionRate];
    private static readonly Quantity[] Stop = [Quantities.BumpClearance, Quantities.BumpStopRate];
    private static readonly Quantity[] Yield = [Quantities.YieldStrength, Quantities.YieldScatter];

    /// <summary>Measures and prints.</summary>
    /// <param name="only">What the names of the rows measured contain, the first row's besides; empty for all.</param>
    public static void Print(string only = "")
    {
        Scenario quarry = BenchmarkScenario.Read("quarry-shuttle");
        Scenario noBearing = quarry with
        { Bearing = null, Inputs = [.. quarry.Inputs.Where(i => i.Quantity.Section != Quantities.BearingSection)] };
        Scenario plain = Without(noBearing, [.. Ageing, .. Stop, .. Yield]);
        (string Name, Scenario Scenario)[] cases =
        [
            ("plain fatigue", plain),
            ("with a further section", WithSections(plain, 1)),
            ("with two of them", WithSections(plain, 2)),
            ("with a bump stop", Without(noBearing, [.. Ageing, .. Yield])),
            ("stop, further section", WithSections(Without(noBearing, [.. Ageing, .. Yield]), 1)),
            ("with first yield", Without(noBearing, [.. Ageing, .. Stop])),
            ("with the bearing", Without(quarry, [.. Ageing, .. Stop, .. Yield])),
            ("with all three", Without(quarry, Ageing)),
            ("three, further section", WithSections(Without(quarry, Ageing), 1)),
            ("and with rust", Without(quarry, Quantities.DamperWear)),
            ("and with rust and wear", quarry),
            ("all, further section", WithSections(quarry, 1)),
        ];
        Console.WriteLine($"quarry shuttle, {StudySettings.BlockSize} rows a block, one core; us a row");
        Console.WriteLine("                          evaluate    times  draw and evaluate    times  whole of risk    times");
        double[]? first = null;
        foreach ((string name, Scenario scenario) in cases.Where((c, i) => i == 0 || c.Name.Contains(only, StringComparison.Ordinal)))
        {
            double[] row = Measure(scenario);
            first ??= row;
            Console.WriteLine($"{name,-24}{row[0],10:F3}{row[0] / first[0],9:F2}{row[1],19:F3}{row[1] / first[1],9:F2}{row[2],15:F3}{row[2] / first[2],9:F2}");
        }
    }

    private static double[] Measure(Scenario scenario)
    {
        var model = new LifeModel(scenario);
        var plan = new BlockPlan(new StudySettings(1L << 40, 1, "plain"), model.Factors.ColumnNames.Length);
        Workspace workspace = model.CreateWorkspace(StudySettings.BlockSize);
        double[][] values = model.CreateColumns(StudySettings.BlockSize);
        var tally = new RiskTally(model, 1, plan);
        long block = 0;
        void Draw() => model.Draw(plan.PlanOf(0), 1, "", block++ * StudySettings.BlockSize, StudySettings.BlockSize, workspace, values);
        Draw();
        double evaluate = ThroughputTable.SecondsPerBlock(() => model.Evaluate(values, StudySettings.BlockSize, workspace));
        double both = ThroughputTable.SecondsPerBlock(() =>
        {
            Draw();
            model.Evaluate(values, StudySettings.BlockSize, workspace);
        });
        double whole = ThroughputTable.SecondsPerBlock(() => tally.Work(block++));
        return [.. new[] { evaluate, both, whole }.Select(s => s / StudySettings.BlockSize * 1e6)];
    }

    // Each like the first, with a worse detail nearer to the wheel.
    private static Scenario WithSections(Scenario scenario, int count)
    {
        for (int i = 0; i < count; i++)
        {
            var section = new CheckedSection($"weld-{i + 1}", scenario.Shape, scenario.Detail with { Categories = ["F"] });
            IEnumerable<Input> own =
                from quantity in Quantities.OfSections
                let like = scenario.Inputs.FirstOrDefault(x => x.Quantity.Key == quantity.Key && x.Quantity.Section is ("axle" or "fatigue"))
                where quantity == Quantities.SectionLifeScatter || like is not null
                select new Input(section.NameOf(quantity.Key), quantity, null, like?.Value ?? new Value.Uncertain(
                    new Lognormal(1, 0.546), Knowledge.Varies), false)
                { Section = section.Name };
            scenario = scenario with { Sections = scenario.Sections.Add(section), Inputs = [.. scenario.Inputs, .. own] };
        }

        return scenario;
    }

    private static Scenario Without(Scenario scenario, params Quantity[] quantities) =>
        scenario with { Inputs = [.. scenario.Inputs.Where(i => !quantities.Contains(i.Quantity))] };
}
