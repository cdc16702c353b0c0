using AxleRisk.Core.Distributions;

namespace AxleRisk.Core.Scenarios;

/// <summary>What a scenario says of one scalar, in the unit of its <see cref="Quantity"/>: a number or a distribution.</summary>
public abstract record Value
{
    /// <summary>The value of the base case.</summary>
    public abstract double Nominal { get; }

    /// <summary>A value that is certain.</summary>
    /// <param name="Number">The value, in the quantity's unit.</param>
    public sealed record Certain(double Number) : Value
    {
        /// <inheritdoc/>
        public override double Nominal => Number;
    }

    /// <summary>A value that is not certain: a factor of the study.</summary>
    /// <param name="Distribution">Its distribution, in the quantity's unit.</param>
    /// <param name="Knowledge">Whether it differs between vehicles or is one value nobody knows.</param>
    /// <param name="StatedNominal">The value of the base case where the scenario states one; otherwise the median is used.</param>
    public sealed record Uncertain(Distribution Distribution, Knowledge Knowledge, double? StatedNominal = null) : Value
    {
        /// <summary>
        /// The distribution as the scenario states it, with its numbers as they stand there, such as
        /// <c>lognormal(5 % to 95 %: 35 to 62)</c>; null for a default, for a choice, and for what was worked out from another value.
        /// </summary>
        public string? Stated { get; init; }

        /// <inheritdoc/>
        public override double Nominal => StatedNominal ?? Distribution.Median;
    }
}

/// <summary>Why a factor is uncertain.</summary>
public enum Knowledge
{
    /// <summary>It differs from vehicle to vehicle (payload, wall thickness).</summary>
    Varies,

    /// <summary>It is one value, the same for all vehicles, that is not known (the stress model's error).</summary>
    Unknown,
}
