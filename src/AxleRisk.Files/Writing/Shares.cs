using System.Collections.Immutable;
using System.Globalization;

namespace AxleRisk.Files.Writing;

/// <summary>Shares of a whole as texts that add up to 1 exactly as they are written.</summary>
public static class Shares
{
    private const int MostDecimals = 9;

    /// <summary>
    /// Rounds shares to a number of decimals by the largest remainder; more decimals where a share above 0 would become 0.
    /// </summary>
    /// <param name="shares">The shares, none below 0, of whatever sum above 0.</param>
    /// <param name="decimals">The decimals, up to 9.</param>
    public static ImmutableArray<decimal> Exactly(IReadOnlyList<double> shares, int decimals = 4)
    {
        if (!(shares.Count > 0 && shares.All(s => s >= 0 && double.IsFinite(s)) && shares.Sum() is > 0 and < double.PositiveInfinity))
        {
            throw new ArgumentException("Shares are not below 0 and not all 0", nameof(shares));
        }

        ImmutableArray<decimal> rounded = Rounded(shares, decimals);
        bool lost = Enumerable.Range(0, shares.Count).Any(i => rounded[i] == 0 && shares[i] > 0);
        return lost && decimals < MostDecimals ? Exactly(shares, decimals + 1) : rounded;
    }

    /// <summary>Shares of a sum above 0, rounded by the largest remainder, so that they add up to 1; small ones may become 0.</summary>
    public static ImmutableArray<decimal> Rounded(IReadOnlyList<double> shares, int decimals)
    {
        double whole = Math.Pow(10, decimals);
        double sum = shares.Sum();

        // A share of 0.35 must not become 0.3499 because its double lies below.
        double[] units = [.. shares.Select(s => s / sum * whole)];
        long[] floors = [.. units.Select(u => (long)Math.Floor(u + 1e-9))];
        int missing = (int)((long)whole - floors.Sum());
        foreach (int i in Enumerable.Range(0, units.Length).OrderByDescending(i => units[i] - floors[i]).Take(missing))
        {
            floors[i]++;
        }

        decimal unit = 1m / (decimal)whole;
        return [.. floors.Select(f => Math.Round(f * unit, decimals))];
    }

    /// <summary>A share as a number of a scenario file.</summary>
    public static TomlValue.Number ToValue(decimal share) =>
        new((double)share, share.ToString("0.0########", CultureInfo.InvariantCulture));
}
