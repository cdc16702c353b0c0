using System.Collections.Immutable;
using AxleRisk.Core.Damage.Fatigue;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Damage.Kernel;

/// <summary>
/// A row's S-N curve as the batch wants it: stress in units of the knee, damage in units of that of a cycle at the knee; of a curve without
/// a knee those of <see cref="AnyCurve.ReferenceOf"/>. Curves of two whole slopes have closed forms, which all of the same slopes share;
/// any other has tables of its own.
/// </summary>
internal sealed class CurveColumns
{
    private const double ScaleOverSigma = 2 * 1.4142135623730950488; // as in Rayleigh

    private readonly ImmutableArray<Constants> constants;

    /// <summary>Buffers for <paramref name="rows"/> rows of the given curves.</summary>
    public CurveColumns(ReadOnlySpan<SnCurve> curves, int rows)
    {
        SlopePairs = [.. curves.ToArray().Where(SlopePair.Serves).Select(c => new SlopePair(c)).Distinct()];
        Integrals = [.. SlopePairs.Select(p => (new PartIntegral(p, 1), new PartIntegral(p, 2)))];
        SnCurve[] others = [.. curves.ToArray().Where(c => !SlopePair.Serves(c))];
        Others = [.. others.Select(c => new AnyCurve(c))];
        constants = [.. curves.ToArray().Select(c => Constants.Of(
            c, SlopePair.Serves(c) ? SlopePairs.IndexOf(new SlopePair(c)) : SlopePairs.Length + Array.IndexOf(others, c)))];
        HasCutOff = constants.Any(c => c.CutOffOverKnee > 0);
        StressPerForce = new double[rows];
        ScalePerForce = new(rows);
        DamageAtKnee = new(rows);
        CutOffOverKnee = new(rows);
        Form = new(rows);
    }

    /// <summary>The different pairs of whole slopes.</summary>
    public ImmutableArray<SlopePair> SlopePairs { get; }

    /// <summary>Their closed forms, for the exponential part and for the Rayleigh parts.</summary>
    public ImmutableArray<(PartIntegral Exponential, PartIntegral Rayleigh)> Integrals { get; }

    /// <summary>The curves that no closed form serves.</summary>
    public ImmutableArray<AnyCurve> Others { get; }

    /// <summary>Closed forms and other curves together.</summary>
    public int Forms => SlopePairs.Length + Others.Length;

    /// <summary>Whether any curve has a cut-off.</summary>
    public bool HasCutOff { get; }

    /// <summary>Stress per force with the thickness correction, MPa/N.</summary>
    public double[] StressPerForce { get; }

    /// <summary>The Rayleigh scale of the ranges per force, over the range at the knee, 1/N.</summary>
    public AlignedBuffer<float> ScalePerForce { get; }

    /// <summary>Damage of a cycle at the knee.</summary>
    public AlignedBuffer<float> DamageAtKnee { get; }

    /// <summary>Range at the cut-off over that at the knee.</summary>
    public AlignedBuffer<float> CutOffOverKnee { get; }

    /// <summary>Index into <see cref="SlopePairs"/> and beyond them <see cref="Others"/>.</summary>
    public AlignedBuffer<float> Form { get; }

    /// <summary>Fills the columns from the rows <paramref name="first"/> and on of a section.</summary>
    public void Fill(SectionColumns columns, int first, int rows)
    {
        ReadOnlySpan<double> categories = columns.Category.AsSpan(first, rows);
        ReadOnlySpan<double> thicknesses = columns.ThicknessMm.AsSpan(first, rows);
        ReadOnlySpan<double> stresses = columns.StressPerForceMPaPerN.AsSpan(first, rows);
        Span<double> stressPerForce = StressPerForce;
        Span<float> scalePerForce = ScalePerForce.Span;
        Span<float> damageAtKnee = DamageAtKnee.Span;
        Span<float> cutOffOverKnee = CutOffOverKnee.Span;
        Span<float> form = Form.Span;
        for (int row = 0; row < rows; row++)
        {
            Constants c = constants[(int)categories[row]];
            double stress = Math.Abs(stresses[row]);
            // The factor is 1 up to the reference; a power is not cheap.
            if (!(thicknesses[row] <= c.Curve.ThicknessReferenceMm))
            {
                stress *= c.Curve.ThicknessFactor(thicknesses[row]);
            }

            stressPerForce[row] = stress;
            scalePerForce[row] = (float)(stress * c.ScaleOverStress);
            damageAtKnee[row] = c.DamageAtKnee;
            cutOffOverKnee[row] = c.CutOffOverKnee;
            form[row] = c.Form;
        }
    }

    private sealed record Constants(SnCurve Curve, double ScaleOverStress, float DamageAtKnee, float CutOffOverKnee, int Form)
    {
        public static Constants Of(SnCurve curve, int form)
        {
            double knee = AnyCurve.ReferenceOf(curve);
            return new(
                curve, ScaleOverSigma / knee, (float)AnyCurve.DamageAtReference(curve), (float)(curve.CutOffMPa / knee), form);
        }
    }
}
