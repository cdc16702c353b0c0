using System.Collections.Immutable;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// The failure probabilities of one row for every subset of its chances that is known: those known are as drawn, the others averaged
/// exactly. Fatigue has two chances, Miner sum and S-N scatter, every further mode one.
/// </summary>
internal sealed class ChanceSubsets
{
    private readonly FailureChances chances;
    private readonly Factor[][] ofMode;
    private readonly int[][] ownSubset;

    /// <summary>Prepares the subsets of a scenario's chances.</summary>
    public ChanceSubsets(LifeModel model)
    {
        chances = model.Chances;
        Factors = chances.IsExact ? [.. model.Factors.Factors.Where(f => chances.ModeOf(f) >= 0)] : [];
        int modes = chances.Modes.Length;
        ofMode = [.. Enumerable.Range(0, modes).Select(m => Factors.Where(f => chances.ModeOf(f) == m).ToArray())];
        ownSubset = [.. ofMode.Select(own => Enumerable.Range(0, Count)
            .Select(subset => own.Select((f, i) => (subset & BitOf(f)) != 0 ? 1 << i : 0).Sum()).ToArray())];
    }

    /// <summary>The factors that are chances, by the bits of a subset; none where they cannot be averaged.</summary>
    public ImmutableArray<Factor> Factors { get; }

    /// <summary>The number of subsets.</summary>
    public int Count => 1 << Factors.Length;

    /// <summary>The bit of a factor; 0 where it is no chance.</summary>
    public int BitOf(Factor factor) => Factors.IndexOf(factor) is >= 0 and var bit ? 1 << bit : 0;

    /// <summary>P(fails between | survives what has been used up before), by subset; 0 where none survives that.</summary>
    /// <param name="before">What each mode has used up before.</param>
    /// <param name="after">What it has after.</param>
    /// <param name="limits">What it can use up, as drawn.</param>
    /// <param name="values">The factors' values.</param>
    /// <param name="row">The row of the values.</param>
    /// <param name="fails">Takes the probabilities.</param>
    public void Fill(
        ReadOnlySpan<double> before, ReadOnlySpan<double> after, ReadOnlySpan<double> limits, double[][] values, int row,
            Span<double> fails)
    {
        const int most = 4; // subsets of one mode's chances
        Span<(double Reaches, double Fails)> known = stackalloc (double, double)[most * before.Length];
        for (int mode = 0; mode < before.Length; mode++)
        {
            Factor[] own = ofMode[mode];
            for (int subset = 0; subset < 1 << own.Length; subset++)
            {
                known[most * mode + subset] = subset > 0 && subset == (1 << own.Length) - 1
                    ? (before[mode] > limits[mode] ? 0 : 1, before[mode] <= limits[mode] && after[mode] > limits[mode] ? 1 : 0)
                    : Averaged(subset == 0 ? chances.Of(mode) : Holding(own[subset - 1], values, row), before[mode], after[mode]);
            }
        }

        for (int subset = 0; subset < Count; subset++)
        {
            // Those that reach the end in the modes so far, and fail before it in one of them.
            (double all, double reach, double failed) = (1, 1, 0);
            for (int mode = 0; mode < before.Length; mode++)
            {
                (double reaches, double ends) = known[most * mode + ownSubset[mode][subset]];
                failed = failed * reaches + reach * ends;
                reach *= reaches - ends;
                all *= reaches;
            }

            fails[subset] = all > 0 ? Math.Min(1, failed / all) : 0;
        }
    }

    private static (double Reaches, double Fails) Averaged(ModeChance chance, double before, double after) =>
        (chance.Survival(before), chance.Fails(before, after));

    private ModeChance Holding(Factor factor, double[][] values, int row) => chances.Holding(factor, values[factor.FirstColumn][row]);
}
