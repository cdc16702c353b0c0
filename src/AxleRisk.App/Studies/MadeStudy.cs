using System.Collections.Immutable;
using System.Text.Json.Nodes;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>A study that was made, in every form that it can be told in.</summary>
/// <param name="Step">What was run.</param>
/// <param name="Result">The result, for those who know its type.</param>
/// <param name="Blocks">What it says.</param>
/// <param name="RunInWords">The run behind it.</param>
/// <param name="Document">The JSON document that its command prints, without the time it took.</param>
/// <param name="Header">The header of its table for other programs.</param>
/// <param name="Rows">The rows of that table.</param>
internal sealed record MadeStudy(
    StudyStep Step, object Result, ImmutableArray<Block> Blocks, string RunInWords, JsonObject Document, string[] Header,
    ImmutableArray<string[]> Rows);
