using System.Collections.Immutable;

namespace AxleRisk.Core.Scenarios;

/// <summary>
/// What is asked and everything known about it: the vehicle, the checked section of its axle, its use and the distance
/// it must last. Validated when made by a reader; the rest of the program trusts it.
/// </summary>
public sealed record Scenario
{
    /// <summary>The title, one line.</summary>
    public required string Title { get; init; }

    /// <summary>What the scenario is about, in the author's words; may be empty.</summary>
    public string About { get; init; } = "";

    /// <summary>Who answers for it and which state of it this is; only printed.</summary>
    public TitleBlock Block { get; init; } = TitleBlock.Empty;

    /// <summary>What costs are stated in, such as <c>EUR</c>; only printed. Null where it is not stated.</summary>
    public string? Currency { get; init; }

    /// <summary>The distance the axle must last, km.</summary>
    public required double RequiredKm { get; init; }

    /// <summary>The shape of the checked section.</summary>
    public required SectionShape Shape { get; init; }

    /// <summary>The weld detail: one category or several with weights.</summary>
    public required Detail Detail { get; init; }

    /// <summary>The checked sections beside the first, in file order.</summary>
    public ImmutableArray<CheckedSection> Sections { get; init; } = [];

    /// <summary>The legs of use, in file order.</summary>
    public required ImmutableArray<Leg> Legs { get; init; }

    /// <summary>
    /// Dirichlet concentration of the road mix (the larger, the surer are the stated shares); null where the shares are certain.
    /// </summary>
    public double? MixConcentration { get; init; }

    /// <summary>Whether an uncertain road mix varies between vehicles or is unknown.</summary>
    public Knowledge MixKnowledge { get; init; } = Knowledge.Varies;

    /// <summary>The kind of the wheel bearing; null where its life is no mode of failure.</summary>
    public BearingKind? Bearing { get; init; }

    /// <summary>How stress cycles are counted in the frequency domain.</summary>
    public CycleCounting Counting { get; init; } = CycleCounting.Dirlik;

    /// <summary>The damage model of a scenario made in code; null for the axle's own, which every scenario file has.</summary>
    public DamageModel? Model { get; init; }

    /// <summary>
    /// Every scalar in use, in the order of <see cref="Quantities.All"/> and, for quantities of a leg, of <see cref="Legs"/>; those of
    /// further sections by section.
    /// Quantities that do not apply (the box of a tube, the class factor of a leg with a stated roughness) are absent.
    /// </summary>
    public required ImmutableArray<Input> Inputs { get; init; }

    /// <summary>Rank correlations between inputs; all others are independent.</summary>
    public ImmutableArray<RankCorrelation> Correlations { get; init; } = [];

    /// <summary>
    /// What was found on one vehicle: for the search for causes, and where it is whole for the trip and for plans of inspection; all
    /// other analyses leave it aside.
    /// </summary>
    public Evidence Evidence { get; init; } = Evidence.None;

    /// <summary>What is known of vehicles in the field; only learning uses it.</summary>
    public FieldData Field { get; init; } = FieldData.None;

    /// <summary>What gauges on test vehicles say; only learning uses it.</summary>
    public GaugeData Gauges { get; init; } = GaugeData.None;

    /// <summary>What data have taught of its unknown inputs; null where nothing has.</summary>
    public Learned? Learned { get; init; }

    /// <summary>What could be done about it, in file order.</summary>
    public ImmutableArray<Remedy> Remedies { get; init; } = [];

    /// <summary>The stretches of the vehicle's past and future use, in order and without a gap from 0 km on; none where the scenario holds
    /// throughout.</summary>
    public ImmutableArray<Stretch> History { get; init; } = [];

    /// <summary>The trip the vehicle sets out on; null where there is none. Only the analysis of trips uses it.</summary>
    public Trip? Trip { get; init; }

    /// <summary>The vehicles sold under one warranty; null where the scenario states none.</summary>
    public Fleet? Fleet { get; init; }

    /// <summary>The choice to be made by its expected cost; null where the scenario states none.</summary>
    public Decision? Decision { get; init; }

    /// <summary>Measurements that could still be made, in file order.</summary>
    public ImmutableArray<PlannedMeasurement> Measurements { get; init; } = [];

    /// <summary>Where in the vehicle's life this holds; null for all of it.</summary>
    internal StretchAge? Age { get; init; }

    /// <summary>How deep the crack is on the way to the end of life; null where the scenario does not say.</summary>
    public Crack? Crack { get; init; }

    /// <summary>The ways of looking for the crack, in file order.</summary>
    public ImmutableArray<InspectionMethod> Inspections { get; init; } = [];

    /// <summary>What an inspection plan is judged by.</summary>
    public InspectionTerms InspectionTerms { get; init; } = InspectionTerms.None;

    /// <summary>A scenario of a damage model made in code.</summary>
    /// <param name="model">The model.</param>
    /// <param name="title">The title, one line.</param>
    /// <param name="requiredKm">The distance it must last, km.</param>
    /// <param name="inputs">What the model reads, and Miner sum and scatter of life where they are not the defaults.</param>
    /// <param name="legs">The legs of use; one of everything where none are given.</param>
    public static Scenario Of(DamageModel model, string title, double requiredKm, IEnumerable<Input> inputs, params IEnumerable<Leg> legs)
    {
        ImmutableArray<Leg> stated = [.. legs];
        return new Scenario
        {
            Title = title,
            RequiredKm = requiredKm,
            Model = model,
            Inputs = [.. inputs],
            Legs = stated.IsEmpty ? [new Leg("use", null, 1)] : stated,
            Shape = SectionShape.Given,
            Detail = new Detail(Detail.OwnCatalogue, [Detail.OwnCategory], [1]),
        };
    }

    /// <summary>The input of a quantity, for a leg where the quantity is the legs'; null where it does not apply.</summary>
    public Input? Find(Quantity quantity, int? leg = null) =>
        Inputs.FirstOrDefault(i => i.Quantity == quantity && i.Leg == leg);

    /// <summary>The input of a quantity of a further section; null where it does not apply.</summary>
    public Input? Find(Quantity quantity, CheckedSection section) =>
        Inputs.FirstOrDefault(i => i.Quantity == quantity && i.Section == section.Name);

    /// <summary>The names of all choices among words: those of the first section's weld detail, then those of the further ones'.</summary>
    public IEnumerable<string> WordNames => [.. Change.WordNames, .. Sections.SelectMany(s => s.WordNames)];

    /// <summary>The weld detail whose choice among words has a name; null for any other name.</summary>
    public Detail? DetailOf(string name) => Change.WordNames.Contains(name) ? Detail
        : Sections.FirstOrDefault(s => s.WordNames.Contains(name))?.Detail;

    /// <summary>What is chosen among words under a name; null for any other name, and where nothing is stated.</summary>
    public WordChoice? FindWords(string name) => DetailOf(name)?.Find(CheckedSection.FirstName(name));

    /// <summary>The same with another choice among words under a name.</summary>
    internal Scenario With(string name, WordChoice choice) => Change.WordNames.Contains(name)
        ? this with { Detail = Detail.With(name, choice) }
        : this with
        {
            Sections =
            [
                .. Sections.Select(s => s.WordNames.Contains(name)
                    ? s with { Detail = s.Detail.With(CheckedSection.FirstName(name), choice) } : s),
            ],
        };

    /// <summary>
    /// The plain words for what has a name in the scenario or its trip: an input, the weld category, the road mix, a leg's share;
    /// the name itself for anything else.
    /// </summary>
    public string LabelOf(string name) => name switch
    {
        _ when WordFactor.LabelOfName(name) is { } label => label,
        MixFactor.FactorName => MixFactor.FactorLabel,
        _ when Stretches.IsNameOf(name) && Stretches.PartsOf(name) is var (place, input) => LabelOf(input) + Stretches.LabelOfPlace(place),
        _ => Inputs.Concat(Trip?.Inputs ?? []).FirstOrDefault(i => i.Name == name)?.Label
            ?? Legs.Where(l => MixFactor.ColumnOf(l) == name).Select(MixFactor.LabelOf).FirstOrDefault(name),
    };
}

/// <summary>One scalar of a scenario.</summary>
/// <param name="Name">Its path in the file: <c>vehicle.sprung_kg</c>, <c>legs.gravel.speed_km_per_h</c>.</param>
/// <param name="Quantity">What it is.</param>
/// <param name="Leg">The index of its leg, for a quantity of the legs.</param>
/// <param name="Value">What the scenario says of it.</param>
/// <param name="IsDefault">Whether the value is the default, not stated in the file.</param>
public sealed record Input(string Name, Quantity Quantity, int? Leg, Value Value, bool IsDefault)
{
    /// <summary>The name of the event of the leg that it belongs to; null for all that is no event's.</summary>
    public string? Event { get; init; }

    /// <summary>The name of the further section that it belongs to; null for all that is no further section's.</summary>
    public string? Section { get; init; }

    /// <summary>By what the column of its factor is multiplied; 1 but for a stretch that states a multiple.</summary>
    internal double OfColumn { get; init; } = 1;

    /// <summary>Where the default in force comes from, if it is not the quantity's own; null otherwise.</summary>
    public string? OwnSource { get; init; }

    /// <summary>Where the default in force comes from; null where there is none.</summary>
    public string? DefaultSource => OwnSource ?? Quantity.DefaultSource;

    /// <summary>
    /// Its name in plain words, without the unit, unique in the scenario: <c>wall thickness</c>, <c>speed on gravel</c>,
    /// <c>trip speed on rocky</c>.
    /// </summary>
    public string Label => Stretches.IsNameOf(Name) && Stretches.PartsOf(Name) is var (place, input)
        ? (this with { Name = input }).Label + Stretches.LabelOfPlace(place)
        : Name.Split('.') switch
        {
            [_, var leg, _] => Prefix + Quantity.LabelOn(leg),
            [_, var leg, _, var happening, _] => Prefix + Quantity.LabelOn($"{happening} on {leg}"),
            _ => Quantity.Label,
        };

    private string Prefix => Trip.IsNameOf(Name) ? "trip " : "";
}

/// <summary>The shape of the checked section.</summary>
public enum SectionShape
{
    /// <summary>A round tube: outside diameter and wall.</summary>
    Tube,

    /// <summary>A rectangular box: width, height and wall.</summary>
    Box,

    /// <summary>A given section modulus; the wall serves the thickness correction only.</summary>
    Given,
}

/// <summary>The counting methods of the damage model, in the scenario's terms.</summary>
public enum CycleCounting
{
    /// <summary>Dirlik's rainflow range density (1985).</summary>
    Dirlik,

    /// <summary>The narrow-band (Rayleigh) bound.</summary>
    NarrowBand,

    /// <summary>Tovo and Benasciutti (2005).</summary>
    TovoBenasciutti,
}

/// <summary>The kind of a wheel bearing.</summary>
public enum BearingKind
{
    /// <summary>Balls.</summary>
    Ball,

    /// <summary>Rollers.</summary>
    Roller,
}

/// <summary>One kind of road in the vehicle's use.</summary>
/// <param name="Name">A short name, unique in the scenario.</param>
/// <param name="RoadClass">The ISO 8608 class letter A to H; null where the roughness is stated outright.</param>
/// <param name="Share">Its share of the distance; the shares of all legs sum to 1.</param>
public sealed record Leg(string Name, char? RoadClass, double Share);

/// <summary>A rank correlation between two inputs.</summary>
/// <param name="First">The name of one input.</param>
/// <param name="Second">The name of the other.</param>
/// <param name="Spearman">Spearman's rank correlation, above -1 and below 1.</param>
public sealed record RankCorrelation(string First, string Second, double Spearman);
