using System.Collections.Immutable;
using System.Globalization;
using AxleRisk.Core.Analyses.Learning;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Benchmarks;

/// <summary>
/// The world of the invented light truck: a truth drawn from what its scenario says is unknown, and what a maker would see of it: walls
/// on receipt, trucks on the road with their failures, gauge runs.
/// </summary>
internal sealed class LightTruck
{
    /// <summary>Mean and standard deviation of the true walls, mm.
    /// The scenario has what was fitted to <see cref="Walls"/> of them.</summary>
    public const double WallMean = 6.45, WallSpread = 0.22;

    private const int Walls = 48;
    private const int Trucks = 1200;
    private const double GaugeSpread = 0.1;

    private static readonly (string Leg, double Speed, double Payload)[] Runs =
    [
        ("town", 35, 300), ("town", 45, 700), ("country-road", 65, 300), ("country-road", 70, 700),
        ("gravel", 40, 300), ("gravel", 50, 700),
    ];

    private readonly ulong seed;
    private readonly Scenario stated;

    /// <summary>Draws a truth.</summary>
    /// <param name="stated">The scenario as the maker states it.</param>
    /// <param name="seed">The seed of truth and data.</param>
    public LightTruck(Scenario stated, ulong seed)
    {
        (this.stated, this.seed) = (stated, seed);
        double[] u = Uniform("truth", 3);
        StressFactor = Known(Quantities.StressFactor, u[0]);
        DamageRatio = Known(Quantities.DamageRatio, u[1]);
        Category = u[2] < stated.Detail.Weights[0] ? stated.Detail.Categories[0] : stated.Detail.Categories[1];
        Truth = new LifeModel(stated with
        {
            Inputs =
            [
                .. stated.Inputs.Select(i =>
                    i.Quantity == Quantities.StressFactor ? i with { Value = new Value.Certain(StressFactor) }
                    : i.Quantity == Quantities.DamageRatio ? i with { Value = new Value.Certain(DamageRatio) }
                    : i.Quantity == Quantities.Wall ? i with
                    { Value = new Value.Uncertain(new Core.Distributions.Normal(WallMean, WallSpread), Knowledge.Varies) } : i),
            ],
            Detail = new Detail(stated.Detail.Catalogue, [Category], [1]),
            Field = FieldData.None,
            Gauges = GaugeData.None,
        });
    }

    /// <summary>The true error of the stress model.</summary>
    public double StressFactor { get; }

    /// <summary>The true ratio of damages.</summary>
    public double DamageRatio { get; }

    /// <summary>The true weld category.</summary>
    public string Category { get; }

    /// <summary>The truth made ready.</summary>
    public LifeModel Truth { get; }

    /// <summary>The scenario with the data of this truth.</summary>
    public Scenario Seen() => stated with { Field = Returns(), Gauges = Gauges() };

    /// <summary>Trucks followed to a distance of their own, and their failures before it; whole km.</summary>
    public FieldData Returns()
    {
        Workspace workspace = Truth.CreateWorkspace(Trucks);
        double[][] columns = Truth.CreateColumns(Trucks), values = Truth.CreateColumns(Trucks);
        for (int column = 0; column < columns.Length; column++)
        {
            Uniform($"truck/{column}", Trucks).CopyTo(columns[column], 0);
            StandardNormal.Quantiles(columns[column], columns[column]);
        }

        Truth.Factors.MapScores(columns, values, Trucks);
        Truth.Evaluate(values, Trucks, workspace);
        double[] followed = Uniform("followed", Trucks);
        return new FieldData("returns.csv",
        [
            .. Enumerable.Range(0, Trucks).Select(i =>
            {
                (double end, double life) = (Math.Round(15_000 + (95_000 * followed[i])), Math.Max(1, Math.Round(workspace.LifeKm[i])));
                return life < end ? new FieldRecord(life, life, 1, "", [], i + 2)
                    : new FieldRecord(end, double.PositiveInfinity, 1, "", [], i + 2);
            }),
        ]);
    }

    /// <summary>One truck at the median of what varies, driven on each leg at two speeds and loads; RMS to three digits.</summary>
    public GaugeData Gauges()
    {
        double[][] scores = Truth.CreateColumns(1), values = Truth.CreateColumns(1);
        Truth.Factors.MapScores(scores, values, 1);
        double[] error = Uniform("gauges", Runs.Length);
        StandardNormal.Quantiles(error, error);
        return new GaugeData("gauges.csv", [.. Runs.Select((run, i) =>
        {
            int leg = stated.Legs.Select(l => l.Name).ToList().IndexOf(run.Leg);
            ImmutableArray<FieldMeasurement> driven =
            [
                new($"legs.{run.Leg}.speed_km_per_h", run.Speed, 0), new("vehicle.payload_kg", run.Payload, 0),
            ];
            var blank = new GaugeRun(leg, driven, null, 1, GaugeSpread, i + 2);
            var model = new GaugeModel(Truth, blank);
            Span<double> ln = stackalloc double[1];
            model.FillLn([.. values.Select(v => (double[])v.Clone())], 1, model.CreateWorkspace(1), ln);
            return blank with { StressRmsMPa = Digits(Math.Exp(ln[0] + (GaugeSpread * error[i]))) };
        })]);
    }

    /// <summary>Writes the data as the files that a maker would have.</summary>
    /// <param name="folder">Where.</param>
    public void Write(string folder)
    {
        double[] walls = Uniform("walls", Walls);
        StandardNormal.Quantiles(walls, walls);
        File.WriteAllLines(Path.Combine(folder, "walls.csv"),
            ["wall_mm", .. walls.Select(z => string.Create(CultureInfo.InvariantCulture, $"{WallMean + (WallSpread * z):0.00}"))]);
        File.WriteAllLines(Path.Combine(folder, "returns.csv"),
        [
            "failed_at_km,survived_km", .. Returns().Records.Select(r => r.HasFailed ? $"{r.FromKm}," : $",{r.FromKm}"),
        ]);
        File.WriteAllLines(Path.Combine(folder, "gauges.csv"),
        [
            "leg,speed_km_per_h,payload_kg,stress_rms_mpa,sd_ln",
            .. Gauges().Runs.Select((r, i) => string.Create(CultureInfo.InvariantCulture,
                $"{Runs[i].Leg},{Runs[i].Speed},{Runs[i].Payload},{r.StressRmsMPa},{GaugeSpread}")),
        ]);
    }

    private static double Digits(double value) =>
        double.Parse(value.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private double Known(Quantity quantity, double u) => ((Value.Uncertain)stated.Find(quantity)!.Value).Distribution.Quantile(u);

    private double[] Uniform(string name, int count)
    {
        var u = new double[count];
        SamplingPlan.FromName("plain", count).Fill(new StreamKey(seed, $"light truck/{name}"), 0, 0, u);
        return u;
    }
}
