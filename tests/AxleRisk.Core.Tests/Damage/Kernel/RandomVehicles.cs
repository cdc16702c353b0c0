using System.Reflection;
using AxleRisk.Core.Damage.Bearings;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Damage.Kernel;
using AxleRisk.Core.Damage.Yields;
using AxleRisk.Core.Randomness;

namespace AxleRisk.Core.Tests.Damage;

/// <summary>Rows over a range wider than anything on wheels, to compare kernels with.</summary>
internal static class RandomVehicles
{
    public const int Legs = 3;

    /// <summary>The mean curves of all catalogues.</summary>
    public static SnCurve[] AllCurves { get; } =
    [
        .. from catalogue in SnCatalogue.Catalogues
           from category in SnCatalogue.Categories(catalogue)
           select SnCatalogue.Find(catalogue, category)!.Mean,
    ];

    /// <summary>Fills <paramref name="rows"/> rows; a third of the rows has another waviness, a third of the legs a corrugation.</summary>
    public static DamageColumns Fill(int rows, int curves) => Fill(new DamageColumns(rows, Legs), rows, curves);

    /// <summary>
    /// The same with a bump stop that is struck by a third of them, a yield strength of a few to a dozen deviations, and a
    /// bearing.
    /// </summary>
    public static DamageColumns FillWithModes(int rows, int curves, double exponent = BearingLife.BallExponent)
    {
        DamageColumns columns = Fill(new DamageColumns(rows, LayoutWithModes(exponent)), rows, curves);
        var u = new double[8][];
        for (int i = 0; i < u.Length; i++)
        {
            new RandomStream(new StreamKey(9, $"{i}")).FillUnit(0, u[i] = new double[rows]);
        }

        var yield = (YieldColumns)columns.Modes[0];
        var bearing = (BearingColumns)columns.Modes[1];
        for (int row = 0; row < rows; row++)
        {
            double weight = 9.8 * columns.SprungMassKg[row];
            columns.BumpClearanceM[row] = Log(0, 0.02, 0.5);
            columns.BumpStopNPerM[row] = columns.SpringNPerM[row] * Log(1, 1, 20);
            yield.NominalStressMPaPerN[row] = Log(2, 20, 200) / weight;
            yield.YieldMPa[row] = Log(3, 150, 900);
            bearing.LoadFactor[row] = Log(4, 0.5, 1.5);
            bearing.RatingN[row] = weight * Log(5, 1, 10);
            bearing.RevolutionsPerKm[row] = Log(6, 300, 700);

            double Log(int factor, double low, double high) => low * Math.Pow(high / low, u[factor][row]);
        }

        return columns;
    }

    /// <summary>A bump stop, first yield and a bearing.</summary>
    public static DamageLayout LayoutWithModes(double exponent) =>
        new(Legs) { HasBumpStop = true, Modes = [n => new YieldColumns(n), n => new BearingColumns(n, exponent)] };

    /// <summary>
    /// The same with two further sections of stresses a few times greater or smaller, each on its own curves, and with damage ratios of the
    /// legs.
    /// </summary>
    public static DamageColumns FillWithSections(int rows, SnCurve[] curves, bool withModes)
    {
        DamageLayout layout = withModes ? LayoutWithModes(BearingLife.BallExponent) : new DamageLayout(Legs);
        DamageColumns columns = Fill(
            new DamageColumns(rows, layout with
            { Sections = [new([.. curves], false), new([.. curves.Reverse()], false)], HasRatios = true }), rows, curves.Length);
        if (withModes)
        {
            DamageColumns like = FillWithModes(rows, curves.Length);
            like.BumpClearanceM.CopyTo(columns.BumpClearanceM, 0);
            like.BumpStopNPerM.CopyTo(columns.BumpStopNPerM, 0);
            for (int mode = 0; mode < 2; mode++)
            {
                foreach ((double[] from, double[] to) in like.Modes[mode].All.Zip(columns.Modes[mode].All))
                {
                    from.CopyTo(to, 0);
                }
            }
        }

        var u = new double[8][];
        for (int i = 0; i < u.Length; i++)
        {
            new RandomStream(new StreamKey(10, $"{i}")).FillUnit(0, u[i] = new double[rows]);
        }

        for (int row = 0; row < rows; row++)
        {
            for (int section = 1; section < 3; section++)
            {
                SectionColumns to = columns.Sections[section];
                to.StressPerForceMPaPerN[row] = columns.StressPerForceMPaPerN[row] * Math.Pow(4, (2 * u[section][row]) - 1);
                to.ThicknessMm[row] = 3 + (40 * u[section + 2][row]);
                to.Category[row] = Math.Floor(curves.Length * u[section + 4][row]);
            }

            for (int leg = 0; leg < Legs; leg++)
            {
                columns.Legs[leg].DamageRatio[row] = 0.5 + leg + u[0][row];
            }
        }

        return columns;
    }

    private static DamageColumns Fill(DamageColumns columns, int rows, int curves)
    {
        Dictionary<string, double[]> units = [];
        for (int row = 0; row < rows; row++)
        {
            double ms = columns.SprungMassKg[row] = LogBetween("ms", 50, 4000);
            columns.UnsprungMassKg[row] = ms * LogBetween("mu", 0.03, 0.8);
            double ks = columns.SpringNPerM[row] = ms * LogBetween("ks", 10, 300);
            columns.DamperNsPerM[row] = 2 * LogBetween("cs", 0.03, 2) * Math.Sqrt(ks * ms);
            double kt = columns.TyreNPerM[row] = ks * LogBetween("kt", 2, 20);
            columns.TyreDampingNsPerM[row] = kt * LogBetween("ct", 1e-6, 5e-3);
            columns.OutboardShare[row] = Unit("phi");
            columns.ContactLengthM[row] = Unit("point contact") < 0.1 ? 0 : LogBetween("contact", 0.03, 0.5);
            columns.StressPerForceMPaPerN[row] = LogBetween("stress", 1e-4, 0.5);
            columns.ThicknessMm[row] = LogBetween("thickness", 3, 60);
            columns.Waviness[row] = Unit("other") < 1.0 / 3 ? 1.8 + 0.6 * Unit("waviness") : 2;
            columns.Category[row] = Math.Floor(curves * Unit("category"));
            for (int leg = 0; leg < Legs; leg++)
            {
                LegColumns l = columns.Legs[leg];
                l.Share[row] = Unit($"share {leg}") < 0.1 ? 0 : Unit($"some {leg}");
                l.SpeedMPerS[row] = LogBetween($"speed {leg}", 1, 45);
                l.RoughnessM3[row] = LogBetween($"rough {leg}", 1e-6, 2e-2);
                l.CorrugatedShare[row] = Unit($"corrugated {leg}") < 1.0 / 3 ? Unit($"part {leg}") : 0;
                l.CorrugationWavelengthM[row] = LogBetween($"wave {leg}", 0.2, 2);
                l.CorrugationRmsM[row] = LogBetween($"rms {leg}", 1e-4, 2e-2);
            }

            double Unit(string name)
            {
                if (!units.TryGetValue(name, out double[]? u))
                {
                    units[name] = u = new double[rows];
                    new RandomStream(new StreamKey(7, name)).FillUnit(0, u);
                }

                return u[row];
            }

            double LogBetween(string name, double low, double high) => low * Math.Pow(high / low, Unit(name));
        }

        return columns;
    }

    /// <summary>The benchmark case's vehicle and legs over plus and minus three standard deviations of its factors.</summary>
    public static DamageColumns FillPickUps(int rows)
    {
        var columns = new DamageColumns(rows, 5);
        double[] shares = [0.20, 0.30, 0.25, 0.20, 0.05];
        double[] roughness = [16e-6, 64e-6, 256e-6, 1024e-6, 4096e-6];
        double[] kmPerHour = [80, 60, 50, 40, 25];
        var u = new double[9][];
        for (int i = 0; i < u.Length; i++)
        {
            new RandomStream(new StreamKey(8, $"{i}")).FillUnit(0, u[i] = new double[rows]);
        }

        for (int row = 0; row < rows; row++)
        {
            columns.SprungMassKg[row] = Around(0, 600, 0.10);
            columns.UnsprungMassKg[row] = Around(1, 90, 0.045);
            columns.SpringNPerM[row] = Around(2, 45e3, 0.08);
            columns.DamperNsPerM[row] = Around(3, 4000, 0.25);
            columns.TyreNPerM[row] = Around(4, 300e3, 0.10);
            columns.TyreDampingNsPerM[row] = 200;
            columns.OutboardShare[row] = 0.5;
            columns.ContactLengthM[row] = Around(5, 0.2, 0.05);
            columns.StressPerForceMPaPerN[row] = Around(6, 0.0066, 0.2);
            columns.ThicknessMm[row] = 6;
            columns.Waviness[row] = 2;
            for (int leg = 0; leg < 5; leg++)
            {
                columns.Legs[leg].Share[row] = shares[leg];
                columns.Legs[leg].SpeedMPerS[row] = Around(7, kmPerHour[leg] / 3.6, 0.15);
                columns.Legs[leg].RoughnessM3[row] = Around(8, roughness[leg], 0.30);
            }

            double Around(int factor, double median, double sd) => median * Math.Exp(3 * sd * (2 * u[factor][row] - 1));
        }

        return columns;
    }

    /// <summary>Copies a row to the first row of <paramref name="to"/>.</summary>
    public static void CopyRow(DamageColumns from, int row, DamageColumns to)
    {
        CopyFirst(from, row, to);
        for (int leg = 0; leg < from.Legs.Length; leg++)
        {
            CopyFirst(from.Legs[leg], row, to.Legs[leg]);
        }
    }

    /// <summary>Copies the first rows, without stop and modes.</summary>
    public static void CopyRows(DamageColumns from, DamageColumns to, int rows)
    {
        CopyAll(from, to);
        for (int leg = 0; leg < from.Legs.Length; leg++)
        {
            CopyAll(from.Legs[leg], to.Legs[leg]);
        }

        void CopyAll(object source, object target)
        {
            foreach (PropertyInfo column in source.GetType().GetProperties().Where(p => p.PropertyType == typeof(double[])))
            {
                var copy = (double[])column.GetValue(target)!;
                ((double[])column.GetValue(source)!).AsSpan(0, Math.Min(rows, copy.Length)).CopyTo(copy);
            }
        }
    }

    private static void CopyFirst(object from, int row, object to)
    {
        foreach (PropertyInfo column in from.GetType().GetProperties().Where(p => p.PropertyType == typeof(double[])))
        {
            if (((double[])column.GetValue(to)!).Length > 0)
            {
                ((double[])column.GetValue(to)!)[0] = ((double[])column.GetValue(from)!)[row];
            }
        }
    }
}
