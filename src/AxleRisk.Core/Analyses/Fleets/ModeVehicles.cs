using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Fleets;

/// <summary>
/// Vehicles that several modes of failure end, or that age: their rates are kept, and what is left to chance in each mode is averaged
/// exactly whenever they are asked about.
/// </summary>
/// <param name="model">The scenario made ready.</param>
/// <param name="plan">How the sample is divided.</param>
internal sealed class ModeVehicles(LifeModel model, NestedPlan plan) : FleetVehicles
{
    private readonly KeptRates[] kept = [.. NewKept(model, plan)];
    private readonly double[][] held = new double[plan.Draws][];
    private readonly FailureChances[] chances = new FailureChances[plan.Draws];
    private readonly Factor[] shared = [.. model.Factors.Factors.Where(f => NestedPlan.IsShared(f) && model.Chances.ModeOf(f) >= 0)];

    /// <inheritdoc/>
    public override void Keep(int draw, int first, int count, Workspace space, double[][] values)
    {
        kept[draw].Keep(space.Rates!, first, count);
        if (first == 0)
        {
            // What the fleet shares has one value in the draw.
            Hold(draw, [.. shared.Select(f => values[f.FirstColumn][0])]);
        }
    }

    /// <inheritdoc/>
    public override double[] NumbersOf(int draw, int first, int count) =>
        [.. first == 0 ? held[draw] : [], .. kept[draw].NumbersOf(first, count)];

    /// <inheritdoc/>
    public override void Put(int draw, int first, int count, ReadOnlySpan<double> numbers)
    {
        if (first == 0)
        {
            Hold(draw, numbers[..shared.Length].ToArray());
        }

        kept[draw].Put(first, count, first == 0 ? numbers[shared.Length..] : numbers);
    }

    /// <inheritdoc/>
    public override Reader CreateReader()
    {
        int capacity = Math.Min(plan.Inner, MostAtOnce);
        LifeRates rates = model.CreateRates(capacity)!;
        (double[] km, double[] part) = (new double[capacity], new double[capacity]);
        (int Draw, int First, int Count) restored = default;
        return (draw, first, lnKm, failed) =>
        {
            int count = lnKm.Length;
            for (int i = 0; i < count; i++)
            {
                km[i] = Math.Exp(lnKm[i]);
            }

            if (restored != (draw, first, count))
            {
                kept[draw].Restore(rates, first, count);
                restored = (draw, first, count);
            }

            chances[draw].FillFailureProbabilities(rates, km.AsSpan(0, count), failed[..count], part.AsSpan(0, count));
        };
    }

    private void Hold(int draw, double[] values)
    {
        held[draw] = values;
        chances[draw] = shared.Length == 0 ? model.Chances : model.Chances.Holding([.. shared.Zip(values)]);
    }

    private static IEnumerable<KeptRates> NewKept(LifeModel model, NestedPlan plan)
    {
        LifeRates like = model.CreateRates(1)!;
        return Enumerable.Range(0, plan.Draws).Select(_ => new KeptRates(like, plan.Inner));
    }
}
