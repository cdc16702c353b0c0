using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Studies;

/// <summary>The one way from sample numbers to unit values of named columns.</summary>
internal static class UnitColumns
{
    /// <summary>Fills the columns of <paramref name="names"/> for the sample numbers <paramref name="first"/> and on.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="sample">The name of the sample, a part of the streams' names; may be empty.</param>
    /// <param name="names">The columns' names.</param>
    /// <param name="dimension">The plan's dimension of the first column; the others follow.</param>
    /// <param name="first">The first sample number.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="unit">Takes the values.</param>
    public static void Fill(
        SamplingPlan plan, ulong seed, string sample, IReadOnlyList<string> names, int dimension, long first, int count, double[][] unit)
    {
        for (int column = 0; column < names.Count; column++)
        {
            plan.Fill(new StreamKey(seed, names[column], sample), dimension + column, first, unit[column].AsSpan(0, count));
        }
    }
}
