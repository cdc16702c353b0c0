using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>
/// The distances at which the rates of a vehicle that ages are evaluated. Rates are followed in their logarithm, which wear and
/// corrosion bend
/// but little, so that five do: see <see cref="AgeCurve"/>.
/// </summary>
internal sealed class AgeGrid
{
    /// <summary>Steps between two ages.</summary>
    public const int Parts = 4;

    private static readonly double[] OfRequired = [0, 0.5, 1, 2, 5];

    // Simpson's rule over the required distance.
    private static readonly double[] Weights = [1.0 / 6, 4.0 / 6, 1.0 / 6, 0, 0];

    private AgeGrid(double[] km, double[] weights)
    {
        Km = [.. km];
        MeanWeights = [.. weights];
        StepKm = [.. Enumerable.Range(0, (km.Length - 1) * Parts + 1).Select(j => j % Parts == 0 ? km[j / Parts] : Between(km, j))];
    }

    /// <summary>A vehicle that stays as it is.</summary>
    public static AgeGrid Unchanged { get; } = new([0], [1]);

    /// <summary>The ages, rising from 0, km.</summary>
    public ImmutableArray<double> Km { get; }

    /// <summary>What each age weighs in a mean over the required distance.</summary>
    public ImmutableArray<double> MeanWeights { get; }

    /// <summary>The ends of the steps, from 0 to the last age, km.</summary>
    public ImmutableArray<double> StepKm { get; }

    /// <summary>The ages of a scenario that ages.</summary>
    public static AgeGrid Over(double requiredKm) => new([.. OfRequired.Select(a => a * requiredKm)], Weights);

    /// <summary>The ages of a scenario.</summary>
    /// <param name="ages">Whether it ages.</param>
    /// <param name="requiredKm">The required distance, km.</param>
    /// <param name="stretch">The stretch of a history that it holds in; null for the whole life.</param>
    public static AgeGrid Of(bool ages, double requiredKm, StretchAge? stretch) => (ages, stretch) switch
    {
        (true, null) => Over(requiredKm),
        (false, null) => Unchanged,
        (true, _) => In(stretch, requiredKm),
        (false, _) => new([stretch.FromKm], [1]),
    };

    // An open stretch as a whole life is, from where it begins; no step of one that ends is longer than half of what is required.
    private static AgeGrid In(StretchAge stretch, double requiredKm)
    {
        bool isOpen = double.IsInfinity(stretch.ToKm);
        double length = isOpen ? Math.Max(requiredKm - stretch.FromKm, requiredKm / 2) : stretch.ToKm - stretch.FromKm;
        double[] parts = isOpen ? OfRequired : length <= requiredKm ? [0, 0.5, 1] : [0, 0.25, 0.5, 0.75, 1];

        // The mean from the beginning to a part t, exact for a parabola through the beginning, the middle and the end.
        double t = Math.Clamp((Math.Min(stretch.ToKm, requiredKm) - stretch.FromKm) / length, 0, 1);
        return new(
            [.. parts.Select(p => p == 1 && !isOpen ? stretch.ToKm : stretch.FromKm + (p * length))],
            [.. parts.Select(p => p switch
            {
                0 => 1 - (1.5 * t) + (2.0 / 3 * t * t),
                0.5 => (2 * t) - (4.0 / 3 * t * t),
                1 => (2.0 / 3 * t * t) - (0.5 * t),
                _ => 0,
            })]);
    }

    /// <summary>Any ages, for tests.</summary>
    internal static AgeGrid At(params double[] km) => new(km, new double[km.Length]);

    /// <summary>The step that a distance above 0 lies in, its end included; the number of steps beyond the last age.</summary>
    public int StepOf(double km)
    {
        int step = 0;
        while (step + 1 < StepKm.Length && StepKm[step + 1] < km)
        {
            step++;
        }

        return step;
    }

    private static double Between(double[] km, int step) =>
        km[step / Parts] + (km[step / Parts + 1] - km[step / Parts]) * (step % Parts) / Parts;
}
