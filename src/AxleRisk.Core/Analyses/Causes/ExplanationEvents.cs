using System.Collections.Immutable;
using AxleRisk.Core.Scenarios;

namespace AxleRisk.Core.Analyses.Causes;

/// <summary>The explanations as events on the columns of a sample.</summary>
internal sealed class ExplanationEvents
{
    private readonly (int Column, Condition Condition)[][] events;

    /// <summary>Prepares the explanations of a scenario whose columns are given.</summary>
    public ExplanationEvents(ImmutableArray<Explanation> explanations, ImmutableArray<string> columns) =>
        events = [.. explanations.Select(e => e.When.Select(c => (columns.IndexOf(c.Column), c)).ToArray())];

    /// <summary>The number of explanations.</summary>
    public int Count => events.Length;

    /// <summary>Which explanations hold in a row, one bit each; 0 where none does.</summary>
    public int PatternOf(double[][] values, int row)
    {
        int pattern = 0;
        for (int e = 0; e < events.Length; e++)
        {
            bool holds = true;
            foreach ((int column, Condition condition) in events[e])
            {
                holds &= condition.Holds(values[column][row]);
            }

            pattern |= holds ? 1 << e : 0;
        }

        return pattern;
    }
}
