using System.Collections.Immutable;
using AxleRisk.Core.Numerics.Vectors;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>
/// The event 'some mode of failure has ended the life by the required distance', its chances integrated exactly. Two rows both fail with
/// the probability F + F' - 1 + B, and both survive with B, the product over the modes: of one survival each where the chance of a further
/// mode is not shared, of the lesser where it is; of fatigue by <see cref="ScatterMoment"/>.
/// </summary>
internal sealed class ModesMoment : JointMoment
{
    /// <summary>The place of fatigue's standard normal score of failure in a row's numbers; the further modes' survivals follow.</summary>
    private const int Score = 1;

    /// <summary>Beyond it a probability is 0 or 1, and no infinite score must meet another.</summary>
    private const double GreatestScore = 40;

    private readonly ScatterMoment fatigue;

    // By further mode: the bit of its scale player in a subset; 0 for none.
    private readonly int[] bits;

    /// <summary>Creates the moment.</summary>
    /// <param name="chances">The chances, known exactly.</param>
    /// <param name="players">The factors that are chances, in the order of the modes: the scale players.</param>
    public ModesMoment(FailureChances chances, ImmutableArray<Factor> players)
    {
        ScalePlayers = players.Length;
        fatigue = new ScatterMoment(0, [.. players.Where(f => chances.ModeOf(f) == 0).Select(chances.ShareOfFatigue)]) { Output = Score };
        bits = [.. Enumerable.Range(1, chances.Modes.Length - 1)
            .Select(mode => players.ToList().FindIndex(f => chances.ModeOf(f) == mode) is >= 0 and var player ? 1 << player : 0)];
    }

    /// <inheritdoc/>
    public override int ScalePlayers { get; }

    /// <summary>Fills in what the moment needs of rows last evaluated.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="workspace">The rows.</param>
    /// <param name="count">Their number.</param>
    /// <param name="outputs">Takes the numbers, by number and row.</param>
    /// <param name="at">The place of the first row among them.</param>
    public static void FillOutputs(LifeModel model, Workspace workspace, int count, double[][] outputs, int at)
    {
        double km = model.Scenario.RequiredKm;
        for (int row = 0; row < count; row++)
        {
            outputs[Score][at + row] = Math.Clamp(
                model.Chances.ScoreOf(0, FailureChances.Used(0, workspace, row, km)), -GreatestScore, GreatestScore);
        }

        for (int mode = 1; mode < model.Chances.Modes.Length; mode++)
        {
            Span<double> survival = outputs[Score + mode].AsSpan(at, count);
            model.Chances.FillHazards(mode, workspace, count, km, survival);
            VectorColumns.ScaledExp(survival, -1, 1, survival);
        }
    }

    /// <inheritdoc/>
    public override void Fill(double[][] rows, int own, Range others, double[][] joint)
    {
        fatigue.Fill(rows, own, others, joint);
        (int first, int count) = others.GetOffsetAndLength(rows[Score].Length);
        double ofOwn = Cubic.Phi(rows[Score][own]), fails = 1 - Survival(rows, own, ofOwn);
        int ofFatigue = 1 << fatigue.ScalePlayers;
        for (int row = 0; row < count; row++)
        {
            double ofOther = Cubic.Phi(rows[Score][first + row]);
            double otherFails = 1 - Survival(rows, first + row, ofOther);

            // Downward: the first subsets, those of fatigue alone, are read by all others.
            for (int q = joint.Length - 1; q >= 0; q--)
            {
                double both = 1 - ofOwn - ofOther + joint[q % ofFatigue][row];
                for (int mode = 0; mode < bits.Length; mode++)
                {
                    (double a, double b) = (rows[Score + 1 + mode][own], rows[Score + 1 + mode][first + row]);
                    both *= (q & bits[mode]) != 0 ? Math.Min(a, b) : a * b;
                }

                joint[q][row] = fails + otherFails - (1 - both);
            }
        }
    }

    private double Survival(double[][] rows, int row, double fatigueFails)
    {
        double survival = 1 - fatigueFails;
        for (int mode = 0; mode < bits.Length; mode++)
        {
            survival *= rows[Score + 1 + mode][row];
        }

        return survival;
    }
}
