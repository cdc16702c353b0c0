using AxleRisk.Core.Damage;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Studies;

/// <summary>The columns of bump stop, first yield and wheel bearing, in SI units.</summary>
internal static class ModeAssembly
{
    /// <summary>The distance that rates of wear and corrosion are stated for, km.</summary>
    public const double AgeingUnitKm = 100_000;

    /// <summary>Adds the columns of the modes that are on.</summary>
    public static void Add(ColumnAssembly to, ModeSwitches modes)
    {
        if (modes.BumpStop)
            AddBumpStop(to);
        if (modes.Yield)
            to.AddScaled(c => c.Modes.YieldMPa, 1, to.SourceOf(Quantities.YieldStrength));
        if (modes.Bearing)
            AddBearing(to);
    }

    private static void AddBumpStop(ColumnAssembly to)
    {
        to.Add(
            c => c.Modes.BumpClearanceM,
            (x, target, n) =>
            {
                for (int i = 0; i < n; i++)
                    target[i] = BumpStopClearance.UnderLoad(1e-3 * x[0][i], x[1][i] * x[2][i], 1000 * (x[3][i] + x[4][i]));
            },
            to.SourceOf(Quantities.BumpClearance), to.SourceOf(Quantities.Payload), to.SourceOf(Quantities.PayloadShare),
            to.SourceOf(Quantities.SpringRate), to.SourceOf(Quantities.HelperSpringRate));
        to.AddScaled(c => c.Modes.BumpStopNPerM, 1000, to.SourceOf(Quantities.BumpStopRate));
    }

    private static void AddBearing(ColumnAssembly to)
    {
        to.Add(
            c => c.Modes.BearingLoadFactor,
            (x, target, n) =>
            {
                for (int i = 0; i < n; i++)
                    target[i] = BearingLife.LoadFactor(x[0][i] + x[1][i], x[2][i]);
            },
            to.SourceOf(Quantities.BearingOverhang), to.SourceOf(Quantities.WheelOffset), to.SourceOf(Quantities.BearingSpread));
        to.AddScaled(c => c.Modes.BearingRatingN, 1000, to.SourceOf(Quantities.BearingRating));
        to.Add(
            c => c.Modes.RevolutionsPerKm,
            (x, target, n) =>
            {
                for (int i = 0; i < n; i++)
                    target[i] = 1e6 / (2 * Math.PI * x[0][i]);
            },
            to.SourceOf(Quantities.RollingRadius));
    }
}
