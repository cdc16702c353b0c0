using AxleRisk.Core.Distributions;
using AxleRisk.Core.Numerics;
using AxleRisk.Core.Numerics.Vectors;

namespace AxleRisk.Core.Modes;

/// <summary>
/// What is left to chance in one mode of failure: how much it can use up. Its cumulated hazard is -ln of the chance that it can
/// use up more.
/// </summary>
internal abstract class ModeChance
{
    /// <summary>The cumulated hazard of what has been used up.</summary>
    public abstract double Hazard(double used);

    /// <summary>The probability of surviving what has been used up.</summary>
    public virtual double Survival(double used) => Math.Exp(-Hazard(used));

    /// <summary>
    /// The probability of surviving <paramref name="before"/> but not <paramref name="after"/>, without loss of digits where it
    /// is small.
    /// </summary>
    public virtual double Fails(double before, double after)
    {
        double from = Hazard(before);
        double to = Hazard(after);
        return to > from ? -LogExp.ExpM1(from - to) * Math.Exp(-from) : 0;
    }

    /// <summary>That of a column; the two may be the same memory.</summary>
    public abstract void FillHazards(ReadOnlySpan<double> used, Span<double> hazard);

    /// <summary>A limit that is certain: failed beyond it.</summary>
    internal sealed class Certain(double limit) : ModeChance
    {
        /// <inheritdoc/>
        public override double Hazard(double used) => used <= limit ? 0 : double.PositiveInfinity;

        /// <inheritdoc/>
        public override void FillHazards(ReadOnlySpan<double> used, Span<double> hazard)
        {
            for (int i = 0; i < used.Length; i++)
            {
                hazard[i] = Hazard(used[i]);
            }
        }
    }

    /// <summary>A limit of some distribution.</summary>
    internal sealed class Scatter(Distribution distribution) : ModeChance
    {
        /// <inheritdoc/>
        public override double Hazard(double used) => distribution.Hazard(used);

        /// <inheritdoc/>
        public override void FillHazards(ReadOnlySpan<double> used, Span<double> hazard) => distribution.Hazards(used, hazard);
    }

    /// <summary>Fatigue: Miner sum and S-N scatter, lognormal together.</summary>
    internal sealed class Fatigue(LifeScale scale) : ModeChance
    {
        /// <inheritdoc/>
        public override double Hazard(double used)
        {
            double failed = scale.FailureProbability(1, used);
            return failed < 0.5 ? -LogExp.LogP1(-failed) : scale.Sigma > 0
                ? -Math.Log(StandardNormal.Upper(scale.Standardised(1, used))) : double.PositiveInfinity;
        }

        /// <inheritdoc/>
        public override double Survival(double used) =>
            !(used > 0) ? 1 : scale.Sigma > 0 ? StandardNormal.Upper(scale.Standardised(1, used)) : 1 - scale.FailureProbability(1, used);

        /// <inheritdoc/>
        public override double Fails(double before, double after)
        {
            if (!(after > before))
            {
                return 0;
            }

            if (!(scale.Sigma > 0))
            {
                return Survival(before) - Survival(after);
            }

            double from = scale.Standardised(1, before);
            double to = scale.Standardised(1, after);
            return from < 0 ? StandardNormal.Cumulative(to) - StandardNormal.Cumulative(from) : StandardNormal.Upper(from)
                - StandardNormal.Upper(to);
        }

        /// <inheritdoc/>
        public override void FillHazards(ReadOnlySpan<double> used, Span<double> hazard)
        {
            if (scale.Sigma > 0)
            {
                VectorColumns.LognormalHazard(used, 1 / scale.Sigma, -scale.Mu / scale.Sigma, hazard);
            }
            else
            {
                new Certain(Math.Exp(scale.Mu)).FillHazards(used, hazard);
            }
        }
    }
}
