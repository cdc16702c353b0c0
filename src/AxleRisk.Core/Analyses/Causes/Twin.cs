using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>
/// The same axle without an explanation: its inputs as they are but those that the explanation states otherwise, and its own Miner
/// sum and scatter (the counterfactual of Pearl, Causality, 2nd edition 2009, 7.1: what is left to chance is kept, one input is set,
/// the model is evaluated anew).
/// </summary>
internal sealed class Twin
{
    // A failure at a distance is one at it: what rounding makes of a twin that is no other counts as failed with the axle.
    private const double Rounding = 1e-6;

    private Twin(int explanation, (int Column, Change Change)[] changes, string name, double passesKm, double failedByKm)
    {
        (Event, Changes, PassesKm, FailedByKm) = (explanation, [.. changes], passesKm, failedByKm);
        Drawn = [.. changes.Where(c => DistributionOf(c.Change) is not null).Select(c => $"{c.Change.Input}/instead/{name}")];
    }

    /// <summary>The place of the explanation among all.</summary>
    public int Event { get; }

    /// <summary>What is otherwise, by column of the sample.</summary>
    public ImmutableArray<(int Column, Change Change)> Changes { get; }

    /// <summary>The distance asked of, km.</summary>
    public double PassesKm { get; }

    /// <summary>The distance by which the axle had failed, with the accuracy its likelihood takes it to, km.</summary>
    public double FailedByKm { get; }

    /// <summary>The streams of the inputs that are drawn anew, in the order of the changes.</summary>
    public ImmutableArray<string> Drawn { get; }

    /// <summary>
    /// The twins of the explanations that state an instead; none where the axle has not failed, or is asked of a distance that it
    /// passed as it was.
    /// </summary>
    public static ImmutableArray<Twin> Of(LifeModel model, Evidence evidence)
    {
        if (evidence.Life?.FailedByKm is not { } failed || PassesOf(model.Scenario, evidence) is not { } passes)
        {
            return [];
        }

        // As far as the likelihood takes "at": see LifeLikelihood and ModesLikelihood.
        double near = evidence.Life is not LifeEvidence.FailedAt ? 0
            : !model.Chances.IsExact ? LifeLikelihood.CountedTolerance
            : model.Modes.IsPlain && evidence.Looks.IsEmpty ? 0 : ModesLikelihood.Near;
        return
        [
            .. evidence.Explanations.Select((e, i) => (Explanation: e, Place: i)).Where(x => !x.Explanation.Instead.IsEmpty)
                .Select(x => new Twin(
                    x.Place, [.. x.Explanation.Instead.Select(c => (model.Factors.ColumnNames.IndexOf(c.Input), c))],
                    x.Explanation.Name, passes, failed * (1 + near) * (1 + Rounding))),
        ];
    }

    /// <summary>The distance asked of, km; null where the axle has not failed before it.</summary>
    public static double? PassesOf(Scenario scenario, Evidence evidence) =>
        (evidence.WouldHavePassedKm ?? scenario.RequiredKm) is var km && km > evidence.Life?.FailedByKm ? km : null;

    /// <summary>What an input is drawn from; null where it follows from the change.</summary>
    public static Distribution? DistributionOf(Change change) => change switch
    {
        Change.ToValue { Value: Value.Uncertain { Distribution: var distribution } } => distribution,
        Change.ToWord { Choice: var words } => words.Spread,
        _ => null,
    };
}

/// <summary>One thread's evaluation of twins.</summary>
/// <param name="model">The model.</param>
/// <param name="twins">The twins.</param>
/// <param name="capacity">The most rows of a block.</param>
internal sealed class TwinWorker(LifeModel model, ImmutableArray<Twin> twins, int capacity)
{
    private readonly Workspace workspace = model.CreateWorkspace(capacity);
    private readonly double[][] own = model.CreateColumns(capacity);
    private readonly double[] limits = new double[capacity * model.Modes.Modes.Length];

    /// <summary>Evaluates one twin of each row.</summary>
    /// <param name="place">Which twin.</param>
    /// <param name="values">The vehicles as they were, Miner sum and scatter as the evidence leaves them.</param>
    /// <param name="uniforms">A column for each of <see cref="Twin.Drawn"/>.</param>
    /// <param name="count">Rows.</param>
    /// <param name="passes">Takes 1 where it passes the distance asked of, else 0.</param>
    /// <param name="fails">Takes 1 where it has failed as the axle had, else 0.</param>
    public void Evaluate(int place, double[][] values, ReadOnlySpan<double[]> uniforms, int count, double[] passes, double[] fails)
    {
        Twin twin = twins[place];
        double[][] columns = [.. values];
        int drawn = 0;
        foreach ((int column, Change change) in twin.Changes)
        {
            columns[column] = own[column];
            Fill(change, values[column].AsSpan(0, count), own[column].AsSpan(0, count),
                Twin.DistributionOf(change) is null ? [] : uniforms[drawn++].AsSpan(0, count));
        }

        model.Evaluate(columns, count, workspace);
        model.FillLimits(columns, count, limits);
        int modes = model.Modes.Modes.Length;
        Span<double> used = stackalloc double[modes];
        for (int row = 0; row < count; row++)
        {
            ReadOnlySpan<double> limit = limits.AsSpan(row * modes, modes);
            FailureChances.FillUsed(workspace, row, twin.PassesKm, used);
            passes[row] = FailureChances.Exceeds(used, limit) ? 0 : 1;
            FailureChances.FillUsed(workspace, row, twin.FailedByKm, used);
            fails[row] = FailureChances.Exceeds(used, limit) ? 1 : 0;
        }
    }

    private void Fill(Change change, ReadOnlySpan<double> before, Span<double> to, ReadOnlySpan<double> uniform)
    {
        if (Twin.DistributionOf(change) is { } distribution)
        {
            distribution.Quantiles(uniform, to);
        }

        switch (change)
        {
            case Change.ToValue { Value: Value.Certain { Number: var number } }:
                to.Fill(number);
                break;
            case Change.Times { Factor: var factor }:
                for (int row = 0; row < to.Length; row++)
                {
                    to[row] = factor * before[row];
                }

                break;
            case Change.ToWord { Input: var name, Choice.Words: var words }:
                ImmutableArray<string> known = model.Scenario.FindWords(name)!.Words;
                for (int row = 0; row < to.Length; row++)
                {
                    to[row] = known.IndexOf(words[uniform.IsEmpty ? 0 : (int)to[row]]);
                }

                break;
        }
    }
}
