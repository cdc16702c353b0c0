using System.Text;
using AxleRisk.Core.Distributions;
using AxleRisk.Core.Scenarios;
using AxleRisk.Files.Reading;

namespace AxleRisk.Files.Writing;

/// <summary>A scenario's text with what it has learned behind it.</summary>
public static class LearnedText
{
    private const string Head = "[learned]";

    /// <summary>The text; what it had learned before is replaced.</summary>
    /// <param name="text">The text of the scenario.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="learned">What was learned.</param>
    public static string Of(string text, Scenario scenario, Learned learned)
    {
        FactorSet factors = FactorSet.Of(scenario);
        var with = new StringBuilder(Without(text).TrimEnd());
        with.Append("\n\n# Written by axlerisk learn; taking it out makes the scenario forget.\n").Append(Head).Append('\n');
        with.Append($"data = {List(learned.Data.Select(Quoted))}\n");
        with.Append($"choices = {List(learned.Choices.Select(Quoted))}\n");
        with.Append($"factors = {List(learned.Columns.Select(Quoted))}\n");
        foreach (LearnedState state in learned.States)
        {
            with.Append("\n[[learned.states]]\n");
            with.Append($"of = {List(state.States.Select((k, i) => Quoted(StateOf(factors.Find(learned.Choices[i])!, k))))}\n");
            with.Append($"probability = {Number(state.Probability)}\n");
            with.Append($"mean = {List(state.Mean.Select(Number))}\n");
            with.Append($"covariance = {List(Triangle(state).Select(Number))}\n");
        }

        return with.ToString();
    }

    // The table and its states, with the comment above, to the end: it is written last.
    private static string Without(string text)
    {
        string[] lines = text.Split('\n');
        int first = Array.FindIndex(lines, l => l.Trim() == Head);
        if (first < 0)
        {
            return text;
        }

        int end = Array.FindIndex(lines, first, l => l.TrimStart().StartsWith('[') && !l.Contains("learned", StringComparison.Ordinal));
        int start = first > 0 && lines[first - 1].StartsWith('#') ? first - 1 : first;
        return string.Join('\n', lines[..start].Concat(end < 0 ? [] : lines[end..]));
    }

    private static IEnumerable<double> Triangle(LearnedState state) => state.Factor.SelectMany((row, i) =>
        Enumerable.Range(0, i + 1).Select(j => Enumerable.Range(0, j + 1).Sum(k => row[k] * state.Factor[j][k])));

    private static string StateOf(Factor factor, int state) =>
        LearnedReader.StateText(factor, ((NumberChoice)factor.Distribution!).Values[state]);

    private static string Quoted(string text) => $"\"{text}\"";

    // A number of TOML with a point, to all its digits.
    private static string Number(double x) => x.ToString("R").Contains('.') || x.ToString("R").Contains('E') ? x.ToString("R")
        : x.ToString("R") + ".0";

    private static string List(IEnumerable<string> items) => $"[{string.Join(", ", items)}]";
}
