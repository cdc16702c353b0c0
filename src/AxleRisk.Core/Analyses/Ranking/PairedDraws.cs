using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Ranking;

/// <summary>
/// Draws two independent samples A and B. They stand in one plan of twice the columns: in a low-discrepancy plan two samples
/// of the same dimensions would not be independent.
/// </summary>
internal static class PairedDraws
{
    /// <summary>The dimensions a plan needs.</summary>
    public static int Dimensions(LifeModel model) => 2 * model.Factors.ColumnNames.Length;

    /// <summary>Draws factor values for the sample numbers <paramref name="first"/> and on.</summary>
    /// <param name="model">The model.</param>
    /// <param name="plan">The plan, of at least <see cref="Dimensions"/> dimensions.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="sample">The name of the sample.</param>
    /// <param name="second">Whether it is B.</param>
    /// <param name="first">The first sample number.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="unit">Takes the unit values, those of correlated factors coupled.</param>
    /// <param name="values">Takes the factor values.</param>
    public static void Draw(
        LifeModel model, SamplingPlan plan, ulong seed, string sample, bool second, long first, int count, double[][] unit, double[][] values)
    {
        for (int column = 0; column < values.Length; column++)
        {
            int dimension = second ? values.Length + column : column;
            plan.Fill(new StreamKey(seed, $"{model.Factors.ColumnNames[column]}/{sample}"), dimension, first, unit[column].AsSpan(0, count));
        }

        model.Factors.Map(unit, values, count);
    }
}
