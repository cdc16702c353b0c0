using System.Collections.Immutable;
using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>Every scalar a scenario can state, with unit, domain and default.</summary>
public static class Quantities
{
    /// <summary>The section whose quantities each leg of use has for itself.</summary>
    public const string LegSection = "use.legs";

    /// <summary>The section whose quantities each event of a leg has for itself.</summary>
    public const string EventSection = "use.legs.events";

    /// <summary>The section of the wheel bearing, which may be left out.</summary>
    public const string BearingSection = "bearing";

    /// <summary>The section of the crack, which may be left out.</summary>
    public const string CrackSection = "crack";

    private const string CommonPractice = "common practice, no source";
    private const string NotPresent = "absent unless stated";

    /// <summary>Sprung mass carried by the wheel, without payload.</summary>
    public static Quantity SprungMass { get; } = new(
        "vehicle", "sprung_kg", "sprung mass", "kg", Domain.Positive, "sprung mass on this wheel, without payload");

    /// <summary>Payload of the whole vehicle.</summary>
    public static Quantity Payload { get; } = new(
        "vehicle", "payload_kg", "payload", "kg", Domain.NonNegative, "payload of the whole vehicle", new Value.Certain(0), NotPresent);

    /// <summary>The part of the payload that this wheel carries.</summary>
    public static Quantity PayloadShare { get; } = new(
        "vehicle", "payload_share", "payload share", "", Domain.Fraction,
        "share of the payload that this wheel carries", new Value.Certain(0.35),
            CommonPractice);

    /// <summary>Unsprung mass of the wheel's side.</summary>
    public static Quantity UnsprungMass { get; } = new(
        "vehicle", "unsprung_kg", "unsprung mass", "kg", Domain.Positive, "unsprung mass on this wheel: wheel, brake and half of the axle");

    /// <summary>Rate of the suspension spring.</summary>
    public static Quantity SpringRate { get; } = new(
        "vehicle", "spring_n_per_mm", "spring rate", "N/mm", Domain.Positive, "rate of the suspension spring at the wheel");

    /// <summary>Rate added by a helper spring.</summary>
    public static Quantity HelperSpringRate { get; } = new(
        "vehicle", "helper_spring_n_per_mm", "helper spring rate", "N/mm", Domain.NonNegative,
        "rate that a helper spring adds", new Value.Certain(0),
            NotPresent);

    /// <summary>Rate of the damper when new.</summary>
    public static Quantity DamperRate { get; } = new(
        "vehicle", "damper_n_s_per_mm", "damper rate", "N s/mm", Domain.Positive, "rate of the damper at the wheel, when new");

    /// <summary>Factor on the damper's rate.</summary>
    public static Quantity DamperCondition { get; } = new(
        "vehicle", "damper_condition", "damper condition", "", Domain.Positive,
        "factor on the damper's rate: 1 new, less when worn", new Value.Certain(1),
            NotPresent);

    /// <summary>Vertical rate of the tyre.</summary>
    public static Quantity TyreRate { get; } = new(
        "vehicle", "tyre_n_per_mm", "tyre rate", "N/mm", Domain.Positive, "vertical rate of the tyre");

    /// <summary>Vertical damping of the tyre.</summary>
    public static Quantity TyreDamping { get; } = new(
        "vehicle", "tyre_damping_n_s_per_mm", "tyre damping", "N s/mm", Domain.NonNegative,
        "vertical damping of the tyre", new Value.Certain(0.1),
            CommonPractice);

    /// <summary>Length of the tyre's contact with the road.</summary>
    public static Quantity ContactLength { get; } = new(
        "vehicle", "contact_length_mm", "tyre contact length", "mm", Domain.Positive,
        "length of the tyre's contact, over which it averages the road",
            new Value.Certain(180), CommonPractice);

    /// <summary>Share of the unsprung mass outboard of the checked section.</summary>
    public static Quantity OutboardShare { get; } = new(
        "vehicle", "outboard_share", "outboard share", "", Domain.Fraction,
        "share of the unsprung mass that lies outboard of the checked section",
            new Value.Certain(0.5), CommonPractice);

    /// <summary>Clearance to the bump stop of the empty vehicle.</summary>
    public static Quantity BumpClearance { get; } = new(
        "vehicle", "bump_clearance_mm", "bump stop clearance", "mm", Domain.Positive,
        "travel of this wheel up to the bump stop, without payload")
    { Without = "no bump stop" };

    /// <summary>Rate of the bump stop.</summary>
    public static Quantity BumpStopRate { get; } = new(
        "vehicle", "bump_stop_n_per_mm", "bump stop rate", "N/mm", Domain.Positive,
        "rate of the bump stop, beside the spring's", new Value.Certain(300),
            CommonPractice)
    { Needs = "bump_clearance_mm" };

    /// <summary>Loss of damper rate with distance.</summary>
    public static Quantity DamperWear { get; } = new(
        "vehicle", "damper_wear_per_100000_km", "damper wear per 100,000 km", "", new Domain(0, 0.99, true),
            "share of its rate that the damper loses in every 100 000 km")
    { Without = "no wear" };

    /// <summary>Lateral distance from contact centre to section.</summary>
    public static Quantity LeverArm { get; } = new(
        "axle", "lever_arm_mm", "lever arm", "mm", Domain.Positive,
            "lateral distance from the tyre's contact centre to the checked section, with the standard wheel");

    /// <summary>Outward shift of the contact centre by a wheel of other offset or a spacer.</summary>
    public static Quantity WheelOffset { get; } = new(
        "axle", "wheel_offset_mm", "wheel offset", "mm", Domain.Any,
        "how far a wheel of other offset or a spacer moves the contact centre outward",
            new Value.Certain(0), NotPresent);

    /// <summary>Outside diameter of a tube.</summary>
    public static Quantity OutsideDiameter { get; } = new(
        "axle", "outside_diameter_mm", "outside diameter", "mm", Domain.Positive, "outside diameter of the tube");

    /// <summary>Width of a box section, across the bending direction.</summary>
    public static Quantity BoxWidth { get; } = new(
        "axle", "width_mm", "box width", "mm", Domain.Positive, "outside width of the box, horizontal");

    /// <summary>Height of a box section, along the bending direction.</summary>
    public static Quantity BoxHeight { get; } = new(
        "axle", "height_mm", "box height", "mm", Domain.Positive, "outside height of the box, vertical");

    /// <summary>Section modulus given outright.</summary>
    public static Quantity SectionModulus { get; } = new(
        "axle", "section_modulus_mm3", "section modulus", "mm3", Domain.Positive, "section modulus in vertical bending, where it is known");

    /// <summary>Wall thickness when new.</summary>
    public static Quantity Wall { get; } = new(
        "axle", "wall_mm", "wall thickness", "mm", Domain.Positive, "wall thickness when new");

    /// <summary>Wall thickness lost to corrosion, on the inside.</summary>
    public static Quantity CorrosionLoss { get; } = new(
        "axle", "corrosion_loss_mm", "corrosion loss", "mm", Domain.NonNegative,
        "wall thickness lost to corrosion", new Value.Certain(0), NotPresent);

    /// <summary>Stress concentration on the nominal bending stress.</summary>
    public static Quantity StressConcentration { get; } = new(
        "axle", "stress_concentration", "stress concentration", "", Domain.Positive,
        "factor on the nominal bending stress at the detail", new Value.Certain(1),
            NotPresent);

    /// <summary>Wall lost to corrosion with distance.</summary>
    public static Quantity CorrosionRate { get; } = new(
        "axle", "corrosion_mm_per_100000_km", "corrosion per 100,000 km", "mm", Domain.NonNegative,
        "wall thickness lost to corrosion in every 100 000 km")
    { Without = "no further corrosion" };

    /// <summary>Yield strength of the section's material.</summary>
    public static Quantity YieldStrength { get; } = new(
        "axle", "yield_mpa", "yield strength", "MPa", Domain.Positive, "yield strength of the section")
    { Without = "first yield is no mode of failure" };

    /// <summary>Scatter of the distance to the largest load.</summary>
    public static Quantity YieldScatter { get; } = new(
        "axle", "largest_load_scatter", "largest load scatter", "", Domain.Positive,
        "distance to the first yield over its mean, for a vehicle that is known",
        new Value.Uncertain(new Exponential(1), Knowledge.Varies), "exponential: rare independent exceedances (Rice 1944)")
    { Needs = "yield_mpa" };

    /// <summary>Basic dynamic load rating of the wheel bearing.</summary>
    public static Quantity BearingRating { get; } = new(
        BearingSection, "dynamic_rating_kn", "bearing load rating", "kN", Domain.Positive,
        "basic dynamic load rating of the more loaded bearing");

    /// <summary>Distance of the two bearings.</summary>
    public static Quantity BearingSpread { get; } = new(
        BearingSection, "spread_mm", "bearing spread", "mm", Domain.Positive,
            "distance between the two bearings, or from the one bearing to the shaft's inner support");

    /// <summary>Overhang of the wheel.</summary>
    public static Quantity BearingOverhang { get; } = new(
        BearingSection, "overhang_mm", "wheel overhang", "mm", Domain.Any,
        "how far the tyre's contact centre lies outboard of the outer bearing, with the standard wheel",
        new Value.Certain(0), CommonPractice);

    /// <summary>Rolling radius of the tyre.</summary>
    public static Quantity RollingRadius { get; } = new(
        BearingSection, "rolling_radius_mm", "rolling radius", "mm", Domain.Positive,
        "rolling radius of the tyre", new Value.Certain(350), CommonPractice);

    /// <summary>Scatter of bearing life.</summary>
    public static Quantity BearingScatter { get; } = new(
        BearingSection, "life_scatter", "bearing life scatter", "", Domain.Positive, "life of a bearing over its rating life",
        new Value.Uncertain(new Weibull(1.5, 4.258647367467115, 0.05), Knowledge.Varies),
            "Weibull, slope 1.5, of the reliability factor of ISO 281:2007");

    /// <summary>Factor on the speed of every leg.</summary>
    public static Quantity SpeedFactor { get; } = new(
        "use", "speed_factor", "speed factor", "", Domain.Positive,
        "factor on the speed of every leg: how fast this driver is", new Value.Certain(1),
            NotPresent);

    /// <summary>Factor on the roughness of every leg.</summary>
    public static Quantity RoughnessFactor { get; } = new(
        "use", "roughness_factor", "roughness factor", "", Domain.Positive,
        "factor on the roughness of every leg: how bad this region's roads are",
            new Value.Certain(1), NotPresent);

    /// <summary>Waviness of the road spectrum.</summary>
    public static Quantity Waviness { get; } = new(
        "use", "waviness", "road waviness", "", new Domain(1, 4, true),
        "exponent of the road spectrum", new Value.Certain(2), "ISO 8608:2016");

    /// <summary>Speed on a leg.</summary>
    public static Quantity Speed { get; } = new(
        LegSection, "speed_km_per_h", "speed", "km/h", Domain.Positive, "speed on the leg");

    /// <summary>Roughness of a leg, stated outright.</summary>
    public static Quantity Roughness { get; } = new(
        LegSection, "roughness_1e_6_m3", "roughness", "1e-6 m3", Domain.Positive,
        "displacement spectral density at 0.1 cycles/m, instead of a class")
    { LabelOfLeg = "roughness of {0}" };

    /// <summary>Where in its class the road of a leg lies.</summary>
    public static Quantity RoughnessWithinClass { get; } = new(
        LegSection, "roughness_within_class", "roughness within its class", "", Domain.Positive,
        "factor on the class mean: where in its class the road lies",
        new Value.Uncertain(new LogUniform(0.5, 2), Knowledge.Varies, 1), "class limits of ISO 8608:2016")
    { LabelOfLeg = "roughness of {0} within its class" };

    /// <summary>Part of a leg that is corrugated.</summary>
    public static Quantity CorrugatedShare { get; } = new(
        LegSection, "corrugated_share", "corrugated share", "", Domain.Fraction,
        "share of the leg that is corrugated", new Value.Certain(0), NotPresent)
    { LabelOfLeg = "corrugated share of {0}" };

    /// <summary>Wavelength of the corrugation.</summary>
    public static Quantity CorrugationWavelength { get; } = new(
        LegSection, "corrugation_wavelength_m", "corrugation wavelength", "m", Domain.Positive,
        "wavelength of the corrugation", new Value.Certain(0.8),
            CommonPractice);

    /// <summary>RMS amplitude of the corrugation.</summary>
    public static Quantity CorrugationRms { get; } = new(
        LegSection, "corrugation_rms_mm", "corrugation RMS", "mm", Domain.NonNegative,
        "RMS amplitude of the corrugation", new Value.Certain(8),
            CommonPractice);

    /// <summary>Factor on the computed damage of a leg.</summary>
    public static Quantity LegDamageRatio { get; } = new(
        LegSection, "damage_ratio", "damage ratio of a leg", "", Domain.Positive,
        "true damage over computed damage on this leg, beside the ratio of the whole use: from gauges or `axlerisk confirm`")
    { Without = "1, as computed", LabelOfLeg = "damage ratio of {0}" };

    /// <summary>How often an event comes on a leg.</summary>
    public static Quantity EventsPerKm { get; } = new(
        EventSection, "per_km", "number a km of an event", "1/km", Domain.NonNegative, "how often it comes in a km of the leg")
    { LabelOfLeg = "number a km of {0}" };

    /// <summary>The range of the wheel's load in an event.</summary>
    public static Quantity EventWheelLoad { get; } = new(
        EventSection, "wheel_load_range", "wheel load of an event", "", new Domain(0, 20, LowIncluded: false),
        "range of the wheel's load, from the least to the greatest, in multiples of its static load")
    { LabelOfLeg = "wheel load range of {0}" };

    /// <summary>The range of the section's moment in an event.</summary>
    public static Quantity EventMoment { get; } = new(
        EventSection, "moment_knm", "moment of an event", "kN m", Domain.Positive,
        "range of the bending moment in the section, in place of the wheel's load: cornering, braking")
    { LabelOfLeg = "moment range of {0}" };

    /// <summary>Factor on the computed stress.</summary>
    public static Quantity StressFactor { get; } = new(
        "fatigue", "stress_factor", "stress factor", "", Domain.Positive, "true stress over computed stress: the error of the stress model",
        new Value.Uncertain(Lognormal.FromMedianAndCov(1, 0.2), Knowledge.Unknown),
            "lognormal, median 1, CoV 0.2: JCSS Probabilistic Model Code 3.12 (stress concentration)");

    /// <summary>Factor on the computed damage.</summary>
    public static Quantity DamageRatio { get; } = new(
        "fatigue", "damage_ratio", "damage ratio", "", Domain.Positive,
        "true damage over computed damage: the error of the linear ride and of the counting, from `axlerisk confirm`",
        new Value.Certain(1), NotPresent);

    /// <summary>Miner sum at failure.</summary>
    public static Quantity MinerSum { get; } = new(
        "fatigue", "miner_sum", "Miner sum", "", Domain.Positive, "Miner sum at failure",
        new Value.Uncertain(Lognormal.FromMedianAndCov(1, 0.3), Knowledge.Varies), "lognormal, median 1, CoV 0.3: after Wirsching 1984");

    /// <summary>Scatter of log10 of the number of cycles about the mean S-N curve.</summary>
    public static Quantity LifeScatter { get; } = new(
        "fatigue", "log10_life_scatter", "S-N scatter", "", Domain.Any, "scatter of log10 N about the mean S-N curve",
        new Value.Uncertain(new Normal(0, 0.2), Knowledge.Varies), "standard deviation 0.20 of log10 N: DNV-RP-C203");

    /// <summary>What scatters in the life of a further section.</summary>
    public static Quantity SectionLifeScatter { get; } = new(
        CheckedSection.Table, "life_scatter", "life scatter", "", Domain.Positive,
        "damage at failure of this section: its own Miner sum times 10 to its own S-N scatter")
    { Without = "as Miner sum and S-N scatter of `[fatigue]`, drawn anew", LabelOfLeg = "life scatter of {0}" };

    /// <summary>What each further section has for itself, with the keys of the first section's quantities.</summary>
    public static ImmutableArray<Quantity> OfSections { get; } =
    [
        .. new[]
        {
            LeverArm, OutsideDiameter, BoxWidth, BoxHeight, SectionModulus, Wall, CorrosionLoss, StressConcentration, CorrosionRate,
            StressFactor,
        }.Select(OfSection), SectionLifeScatter,
    ];

    /// <summary>Depth of the crack of a new part.</summary>
    public static Quantity InitialDepth { get; } = new(
        CrackSection, "initial_depth_mm", "initial crack depth", "mm", Domain.Positive,
        "depth of the crack, or of the flaw that becomes one, in a new part; below the wall")
    { Without = "a curve of your own is needed" };

    /// <summary>Exponent of the growth of the crack.</summary>
    public static Quantity ParisExponent { get; } = new(
        CrackSection, "growth_exponent", "crack growth exponent", "", new Domain(1, 10, true),
        "exponent m of the law of Paris and Erdogan: growth a cycle over the range of stress intensity to this power", new Value.Certain(3),
            "3 for steel in air: BS 7910, from memory")
    { Needs = "initial_depth_mm" };

    /// <summary>All quantities in the order of the scenario file and of every table.</summary>
    public static ImmutableArray<Quantity> All { get; } =
    [
        SprungMass, Payload, PayloadShare, UnsprungMass, SpringRate, HelperSpringRate, DamperRate, DamperCondition,
        TyreRate, TyreDamping, ContactLength, OutboardShare, BumpClearance, BumpStopRate, DamperWear,
        LeverArm, WheelOffset, OutsideDiameter, BoxWidth, BoxHeight, SectionModulus, Wall, CorrosionLoss, StressConcentration,
        CorrosionRate, YieldStrength, YieldScatter,
        BearingRating, BearingSpread, BearingOverhang, RollingRadius, BearingScatter,
        SpeedFactor, RoughnessFactor, Waviness,
        Speed, Roughness, RoughnessWithinClass, CorrugatedShare, CorrugationWavelength, CorrugationRms,
        LegDamageRatio, EventsPerKm, EventWheelLoad, EventMoment,
        StressFactor, DamageRatio, MinerSum, LifeScatter,
        .. OfSections,
        InitialDepth, ParisExponent,
    ];

    /// <summary>A quantity of the first section as a further one has it; null where all sections share it.</summary>
    public static Quantity? OfSection(string key) => OfSections.FirstOrDefault(q => q.Key == key);

    // All of an axle rusts alike unless a section states otherwise.
    private static Quantity OfSection(Quantity first)
    {
        Quantity own = first with { Section = CheckedSection.Table, LabelOfLeg = first.Label + " of {0}" };
        return first == CorrosionLoss || first == CorrosionRate
            ? own with { Default = null, DefaultSource = null, Without = "as the first section's" } : own;
    }
}
