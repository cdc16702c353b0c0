using AxleRisk.Core.Randomness;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Remedies;

/// <summary>
/// Common random numbers for several scenarios: a column of one name has the same unit values in every scenario that has it,
/// also where a plan's values depend on the column's place (Sobol'), for its place is that among all names. In the first
/// scenario every column keeps its own place, so that its sample is the one that <see cref="LifeModel.Draw"/> draws.
/// </summary>
internal sealed class CommonDraw
{
    private readonly string[] names;
    private readonly int[][] placeOf;

    public CommonDraw(IReadOnlyList<LifeModel> models)
    {
        names = [.. models.SelectMany(m => m.Factors.ColumnNames).Distinct()];
        placeOf = [.. models.Select(m => m.Factors.ColumnNames.Select(n => Array.IndexOf(names, n)).ToArray())];
    }

    /// <summary>The number of different columns.</summary>
    public int Columns => names.Length;

    /// <summary>Draws the unit values of all names for the sample numbers <paramref name="first"/> and on.</summary>
    public void Draw(SamplingPlan plan, ulong seed, string sample, long first, int count, double[][] unit)
    {
        for (int place = 0; place < names.Length; place++)
        {
            string stream = sample.Length == 0 ? names[place] : $"{names[place]}/{sample}";
            plan.Fill(new StreamKey(seed, stream), place, first, unit[place].AsSpan(0, count));
        }
    }

    /// <summary>Copies the unit values of one scenario's columns.</summary>
    public void CopyTo(int model, double[][] unit, double[][] ofModel, int count)
    {
        for (int column = 0; column < ofModel.Length; column++)
        {
            unit[placeOf[model][column]].AsSpan(0, count).CopyTo(ofModel[column]);
        }
    }
}
