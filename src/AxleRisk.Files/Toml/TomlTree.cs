using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace AxleRisk.Files.Toml;

/// <summary>Text to a tree of tables: the syntax of TOML, and nothing of what a scenario is.</summary>
internal static class TomlTree
{
    /// <summary>A text of noise has an error in every character; after so many the rest says nothing new.</summary>
    private const int MostDiagnostics = 1000;

    /// <summary>Parses a text. Errors go to <paramref name="errors"/>; null where the tree is not worth reading on.</summary>
    public static TomlTable? Parse(string text, ErrorLog errors)
    {
        DocumentSyntax document;
        try
        {
            // The parser's own search for keys that are there twice takes quadratic time and memory; TreeBuilder does it.
            document = SyntaxParser.Parse(text, validate: false);
        }
        catch (TomlException e)
        {
            // The parser throws only for brackets nested deeper than it allows.
            errors.Add(new Position(Math.Max(1, e.Line ?? 1), Math.Max(1, e.Column ?? 1)), "brackets are nested too deeply");
            return null;
        }

        foreach (DiagnosticMessage diagnostic in document.Diagnostics.Take(MostDiagnostics))
        {
            errors.Add(TreeBuilder.PositionOf(diagnostic.Span), MessageText.OneLine(diagnostic.Message));
        }

        if (document.HasErrors)
        {
            return null;
        }

        // What is defined twice is not in the tree, and its absence would only cause further errors.
        TomlTable tree = new TreeBuilder(errors).Build(document);
        return errors.Any ? null : tree;
    }
}
