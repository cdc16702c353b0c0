using System.Collections.Immutable;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Format;
using AxleRisk.Files.Toml;

namespace AxleRisk.Files.Reading;

/// <summary>Reads what a scenario has learned.</summary>
internal sealed class LearnedReader(ErrorLog errors)
{
    private const double Rounding = 1e-6;

    /// <summary>Reads the table; null where there is none or, with the errors logged, where it is wrong.</summary>
    public Learned? Read(TableReader? table, Scenario scenario)
    {
        if (table is null)
        {
            return null;
        }

        Position at = table.Table.At;
        ImmutableArray<string> data = table.Texts("data", mustBe: true), choices = table.Texts("choices"), columns = table.Texts("factors");
        IReadOnlyList<TomlTable> states = table.Inners("states") ?? [];
        if (!table.RejectUnknown() || errors.Any)
        {
            return null;
        }

        // What is wrong with the scenario itself has been told; its factors are sound here.
        FactorSet factors = FactorSet.Of(scenario with { Learned = null });
        foreach (string name in choices.Concat(columns))
        {
            Factor? factor = factors.Factors.FirstOrDefault(f => f.ColumnNames.Contains(name));
            if (factor is not { Knowledge: Knowledge.Unknown } || factor.Distribution is NumberChoice != choices.Contains(name))
            {
                errors.Add(at, $"learned: {MessageText.OneLine(name)} is no unknown {(choices.Contains(name) ? "choice" : "factor")} of this scenario any more; "
                    + "learn again, or take [learned] out");
                return null;
            }
        }

        List<LearnedState> read = [.. states.Select(s => ReadState(s, choices, columns.Length, factors)).OfType<LearnedState>()];
        double sum = read.Sum(s => s.Probability);
        if (!errors.Any && (read.Count == 0 || Math.Abs(sum - 1) > Rounding))
        {
            errors.Add(at, read.Count == 0 ? "learned must have at least one [[learned.states]]" : $"learned.states: the probabilities must add up to 1, not to {sum:G6}");
        }

        return errors.Any ? null : new Learned(choices, columns, [.. read.Select(s => s with { Probability = s.Probability / sum })], data);
    }

    private LearnedState? ReadState(TomlTable node, ImmutableArray<string> choices, int dimension, FactorSet factors)
    {
        var table = new TableReader(node, LearnedFormat.State.Path, LearnedFormat.State, errors);
        ImmutableArray<string> of = table.Texts("of");
        double? probability = table.Number("probability");
        double[]? mean = Numbers(table, "mean", dimension), covariance = Numbers(table, "covariance", dimension * (dimension + 1) / 2);
        if (!table.RejectUnknown() || probability is not double p || mean is null || covariance is null)
        {
            return null;
        }

        if (of.Length != choices.Length)
        {
            errors.Add(node.At, $"learned.states.of must be as many states as there are choices: {choices.Length}, not {of.Length}");
            return null;
        }

        var states = ImmutableArray.CreateBuilder<int>();
        for (int i = 0; i < choices.Length; i++)
        {
            Factor factor = factors.Find(choices[i])!;
            ImmutableArray<double> values = ((NumberChoice)factor.Distribution!).Values;
            int state = Enumerable.Range(0, values.Length).FirstOrDefault(k => StateText(factor, values[k]) == of[i], -1);
            if (state < 0)
            {
                errors.Add(node.At, $"learned.states.of: {choices[i]} has no state {MessageText.Quote(of[i])}");
                return null;
            }

            states.Add(state);
        }

        try
        {
            return LearnedState.OfTriangle(states.ToImmutable(), p, mean, covariance);
        }
        catch (DistributionException)
        {
            errors.Add(node.At, "learned.states.covariance must be a positive definite matrix");
            return null;
        }
    }

    /// <summary>A state as it stands in the file.</summary>
    internal static string StateText(Factor factor, double value) => factor is ScalarFactor ? value.ToString("R") : factor.Show(value);

    private double[]? Numbers(TableReader table, string key, int count)
    {
        if (table.Require(key) is not TomlEntry entry)
        {
            return null;
        }

        if (entry.Node is TomlArray array && array.Items.Count == count
            && array.Items.TrueForAll(i => i is TomlNumber { Number: double x } && double.IsFinite(x)))
        {
            return [.. array.Items.Select(i => ((TomlNumber)i).Number)];
        }

        errors.Add(entry.Node.At, $"{table.NameOf(key)} must be {count} numbers, as many as the factors of [learned] ask for");
        return null;
    }
}
