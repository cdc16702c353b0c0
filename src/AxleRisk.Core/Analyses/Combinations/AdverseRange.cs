using AxleRisk.Core.Numerics;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Combinations;

/// <summary>What part of a factor a range is.</summary>
public enum RangePart
{
    /// <summary>The lower fifth.</summary>
    Below,

    /// <summary>The upper fifth.</summary>
    Above,

    /// <summary>One state of a choice.</summary>
    State,
}

/// <summary>A part of one factor: its adverse fifth, or one state of a choice.</summary>
/// <param name="Factor">The factor.</param>
/// <param name="Column">The name of its column: the factor's own, or a leg's share in the road mix.</param>
/// <param name="Part">Which part.</param>
/// <param name="Limit">The end of the fifth, or the state, in the factor's unit.</param>
/// <param name="Mass">How likely a vehicle is to lie in it.</param>
public sealed record AdverseRange(Factor Factor, string Column, RangePart Part, double Limit, double Mass)
{
    /// <summary>The column in plain words.</summary>
    public string Label => Factor.LabelOf(Column);

    /// <summary>P(failure | in this range); NaN until the sample is drawn.</summary>
    public Interval Probability { get; init; } = new(double.NaN, double.NaN, double.NaN);
}
