using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Studies;

/// <summary>What each mode of failure uses up over distance, by row: damage, yields, rating lives. A thread's buffer.</summary>
internal sealed class LifeRates
{
    private readonly ImmutableArray<AgeCurve> aged;
    private readonly ImmutableArray<FailureMode> modes;

    // The section whose wall ends each mode, and how far the wall of each section lasts: empty where it does not corrode.
    private readonly ImmutableArray<int?> endsWithWallOf;
    private readonly double[][] wallsLastKm;
    private readonly ImmutableArray<LifeRates> stretches;

    internal LifeRates(ModeSet modes, AgeGrid ages, int capacity)
    {
        int padded = PaddedTail.Padded(capacity);
        Limits = new double[padded];
        Lives = new double[padded];
        (stretches, this.modes) = ([], modes.Modes);
        wallsLastKm =
        [
            .. modes.Layout.Sections.Select(s => s.Corrodes).Prepend(modes.Layout.Corrodes)
                .Select(corrodes => new double[corrodes ? padded : 0]),
        ];
        endsWithWallOf = [0, .. modes.Further.Select(m => m.EndsWithWallOf)];
        aged = [.. modes.Modes.Select(_ => new AgeCurve(ages, capacity))];
        Curves = [.. aged];
        FurtherAtAge = [.. Enumerable.Range(0, ages.Km.Length).Select(age => aged.Skip(1).Select(c => c.Rates[age]).ToArray())];
        Columns = [.. aged.SelectMany(c => c.Rates), .. wallsLastKm.Where(w => w.Length > 0)];
    }

    /// <summary>Joins those of the stretches of a history.</summary>
    internal LifeRates(ImmutableArray<LifeRates> stretches, ImmutableArray<double> fromKm, int capacity)
    {
        int padded = PaddedTail.Padded(capacity);
        Limits = new double[padded];
        Lives = new double[padded];
        this.stretches = stretches;
        (aged, modes, endsWithWallOf, wallsLastKm, FurtherAtAge) = ([], [], [], [], []);
        Curves = [.. Enumerable.Range(0, stretches[0].Curves.Length)
            .Select(mode => new StretchedCurve([.. stretches.Select(s => s.Curves[mode])], fromKm, capacity))];
        Columns = [.. stretches.SelectMany(s => s.Columns)];
    }

    /// <summary>The rates of a mode that is on, by age and row; none of a history.</summary>
    public double[][] Of(FailureMode mode) => aged.IsEmpty ? [] : aged[modes.IndexOf(mode)].Rates;

    /// <summary>Room for one mode's limits, padded to whole registers.</summary>
    internal double[] Limits { get; }

    /// <summary>Room for the lives in one mode.</summary>
    internal double[] Lives { get; }

    /// <summary>What is used up over distance, by mode.</summary>
    internal ImmutableArray<UsageCurve> Curves { get; }

    /// <summary>The rates of fatigue, by age and row; none of a history.</summary>
    internal double[][] OfFatigue => aged[0].Rates;

    /// <summary>The rates of the modes beside fatigue, by age, mode and row; none of a history.</summary>
    internal ImmutableArray<double[][]> FurtherAtAge { get; }

    /// <summary>All that a row's rates over distance are made of: who keeps them and puts them back has the same curves.</summary>
    internal ImmutableArray<double[]> Columns { get; }

    /// <summary>Whether any wall corrodes.</summary>
    internal bool HasWalls => wallsLastKm.Any(w => w.Length > 0);

    /// <summary>Says how far the walls of the first rows last that corrode; before the curves are filled.</summary>
    internal void TakeWalls(DamageColumns columns, int count)
    {
        for (int section = 0; section < wallsLastKm.Length; section++)
        {
            if (wallsLastKm[section].Length > 0)
            {
                columns.Sections[section].WallLastsKm.AsSpan(0, count).CopyTo(wallsLastKm[section]);
            }
        }
    }

    /// <summary>Draws the curves of the first <paramref name="count"/> rows through their rates.</summary>
    internal void FillCurves(int count)
    {
        for (int mode = 0; mode < aged.Length; mode++)
        {
            aged[mode].Fill(count, endsWithWallOf[mode] is { } section && wallsLastKm[section].Length > 0 ? wallsLastKm[section] : null);
        }

        foreach (LifeRates stretch in stretches)
        {
            stretch.FillCurves(count);
        }

        JoinCurves(count);
    }

    /// <summary>Sums up the stretches of a history, whose curves are drawn.</summary>
    internal void JoinCurves(int count)
    {
        foreach (UsageCurve curve in Curves)
        {
            (curve as StretchedCurve)?.Fill(count);
        }
    }
}
