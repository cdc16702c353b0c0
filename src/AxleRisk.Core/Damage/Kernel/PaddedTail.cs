namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// The rows of a last tile that is not full, padded with copies of its last row to whole registers: so they run through the same code as
/// all others, and nothing is read beyond the columns.
/// </summary>
internal static class PaddedTail
{
    // The widest registers hold 16 numbers.
    private const int Multiple = 16;

    /// <summary>A number of rows and those that fill up its last register.</summary>
    public static int Padded(int rows) => (rows + Multiple - 1) / Multiple * Multiple;

    /// <summary>
    /// Copies the rows <paramref name="first"/> and on to the start of <paramref name="to"/>; returns their padded number.
    /// </summary>
    public static int Fill(DamageColumns from, int first, int rows, DamageColumns to)
    {
        int padded = Padded(rows);
        Copy(from.SprungMassKg, to.SprungMassKg);
        Copy(from.UnsprungMassKg, to.UnsprungMassKg);
        Copy(from.SpringNPerM, to.SpringNPerM);
        Copy(from.DamperNsPerM, to.DamperNsPerM);
        Copy(from.TyreNPerM, to.TyreNPerM);
        Copy(from.TyreDampingNsPerM, to.TyreDampingNsPerM);
        Copy(from.OutboardShare, to.OutboardShare);
        Copy(from.ContactLengthM, to.ContactLengthM);
        Copy(from.Waviness, to.Waviness);
        for (int section = 0; section < to.Sections.Length; section++)
        {
            Copy(from.Sections[section].StressPerForceMPaPerN, to.Sections[section].StressPerForceMPaPerN);
            Copy(from.Sections[section].ThicknessMm, to.Sections[section].ThicknessMm);
            Copy(from.Sections[section].Category, to.Sections[section].Category);
        }

        if (to.Layout.HasBumpStop)
        {
            Copy(from.BumpClearanceM, to.BumpClearanceM);
            Copy(from.BumpStopNPerM, to.BumpStopNPerM);
        }

        for (int mode = 0; mode < to.Modes.Length; mode++)
        {
            for (int column = 0; column < to.Modes[mode].All.Length; column++)
            {
                Copy(from.Modes[mode].All[column], to.Modes[mode].All[column]);
            }
        }

        for (int leg = 0; leg < to.Legs.Length; leg++)
        {
            LegColumns source = from.Legs[leg];
            LegColumns target = to.Legs[leg];
            Copy(source.Share, target.Share);
            Copy(source.SpeedMPerS, target.SpeedMPerS);
            Copy(source.RoughnessM3, target.RoughnessM3);
            Copy(source.CorrugatedShare, target.CorrugatedShare);
            Copy(source.CorrugationWavelengthM, target.CorrugationWavelengthM);
            Copy(source.CorrugationRmsM, target.CorrugationRmsM);
            if (to.Layout.HasRatios)
            {
                Copy(source.DamageRatio, target.DamageRatio);
            }
        }

        return padded;

        void Copy(double[] source, double[] target)
        {
            source.AsSpan(first, rows).CopyTo(target);
            target.AsSpan(rows, padded - rows).Fill(source[first + rows - 1]);
        }
    }
}
