using Microsoft.CodeAnalysis.Text;

namespace AxleRisk.Benchmarks.Mutants;

/// <summary>One planted error: what stands in place of a piece of a source file.</summary>
/// <param name="File">The file, relative to the folder of the sources.</param>
/// <param name="Span">The piece.</param>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Kind">What kind of error it is.</param>
/// <param name="Before">The piece as it is.</param>
/// <param name="After">What it becomes.</param>
/// <param name="IsStatement">Whether the piece is a statement; an expression otherwise.</param>
internal sealed record Mutant(string File, TextSpan Span, int Line, string Kind, string Before, string After, bool IsStatement)
{
    /// <summary>The piece with a switch that chooses between both.</summary>
    public string Switched(int number)
    {
        string on = $"global::AxleRisk.Core.Planted.On({number})";
        return IsStatement ? $"if ({on}) {{ {After} }} else {{ {Before} }}" : $"({on} ? ({After}) : ({Before}))";
    }
}
