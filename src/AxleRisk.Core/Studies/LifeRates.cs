using System.Collections.Immutable;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Modes;
using AxleRisk.Core.Outcomes;

namespace AxleRisk.Core.Studies;

/// <summary>What each mode of failure uses up per km, by age and row: damage, yields, rating lives. A thread's buffer.</summary>
public sealed class LifeRates
{
    private readonly ModeSet modes;
    private readonly double[][] wallsLastKm;

    internal LifeRates(ModeSet modes, AgeGrid ages, int capacity)
    {
        int padded = PaddedTail.Padded(capacity);
        Limits = new double[padded];
        Lives = new double[padded];
        wallsLastKm =
        [
            .. modes.Layout.Sections.Select(s => s.Corrodes).Prepend(modes.Layout.Corrodes)
                .Select(corrodes => new double[corrodes ? padded : 0]),
        ];
        this.modes = modes;
        Curves = [.. modes.Modes.Select(_ => new AgeCurve(ages, capacity))];
        FurtherAtAge = [.. Enumerable.Range(0, ages.Km.Length).Select(age => Curves.Skip(1).Select(c => c.Rates[age]).ToArray())];
        Columns = [.. Curves.SelectMany(c => c.Rates), .. wallsLastKm.Where(w => w.Length > 0)];
    }

    /// <summary>The rates of a mode that is on, by age and row.</summary>
    public double[][] Of(FailureMode mode) => Curves[modes.Modes.IndexOf(mode)].Rates;

    /// <summary>Room for one mode's limits, padded to whole registers.</summary>
    internal double[] Limits { get; }

    /// <summary>Room for the lives in one mode.</summary>
    internal double[] Lives { get; }

    /// <summary>The rates over distance, by mode.</summary>
    internal ImmutableArray<AgeCurve> Curves { get; }

    /// <summary>The rates of the modes beside fatigue, by age, mode and row.</summary>
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
        double[]? Ends(int? section) => section is { } place && wallsLastKm[place].Length > 0 ? wallsLastKm[place] : null;
        Curves[0].Fill(count, Ends(0));
        for (int mode = 0; mode < modes.Further.Length; mode++)
        {
            Curves[mode + 1].Fill(count, Ends(modes.Further[mode].EndsWithWallOf));
        }
    }
}
