using System.CommandLine;
using System.CommandLine.Completions;
using AxleRisk.App.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary>What may stand at a place of the command line, from the commands themselves.</summary>
internal static class Suggestions
{
    /// <summary>What the word under way may become.</summary>
    /// <param name="root">The commands.</param>
    /// <param name="before">The words before it, without the program's name.</param>
    /// <param name="word">The word under way, perhaps empty. An option with its value after = is one word.</param>
    /// <returns>Whole words. One that ends with / or = wants more after it.</returns>
    public static IEnumerable<string> Of(Command root, IReadOnlyList<string> before, string word)
    {
        Command command = root;
        Option? open = null;
        foreach (string past in before)
        {
            // Bash takes --option=value apart at the sign.
            if (past == "=")
            {
                continue;
            }

            Option? named = open is null ? Options(root, command).FirstOrDefault(o => Names(o).Contains(past)) : null;
            open = named is not null && named.Arity.MinimumNumberOfValues > 0 ? named : null;
            command = command.Subcommands.FirstOrDefault(c => c.Name == past) ?? command;
        }

        if (word == "=")
        {
            word = "";
        }

        if (open is not null)
        {
            return Starting(Values(open, open.HelpName, before, word), word);
        }

        if (word.Split('=', 2) is [var name, var value]
            && Options(root, command).FirstOrDefault(o => Names(o).Contains(name)) is { } option)
        {
            return Starting(Values(option, option.HelpName, before, value), value).Select(v => $"{name}={v}");
        }

        if (word.StartsWith('-'))
        {
            return Starting(Options(root, command).SelectMany(Names).Where(n => n.StartsWith('-') && n.Length > 2), word);
        }

        return Starting(command.Subcommands.Count > 0
            ? command.Subcommands.Where(c => !c.Hidden).Select(c => c.Name)
            : command.Arguments.SelectMany(a => Values(a, a.HelpName ?? a.Name, before, word)), word);
    }

    /// <summary>The options of a command and those of every command.</summary>
    public static IEnumerable<Option> Options(Command root, Command command) =>
        command.Options.Concat(root == command ? [] : root.Options.Where(o => o.Recursive)).Where(o => !o.Hidden);

    /// <summary>All names of an option, its own first.</summary>
    public static IEnumerable<string> Names(Option option) => option.Aliases.Prepend(option.Name);

    /// <summary>The values that an option or argument is limited to; none where it is not.</summary>
    public static IEnumerable<string> Choices(Symbol symbol) => symbol.GetCompletions(CompletionContext.Empty).Select(c => c.Label);

    private static IEnumerable<string> Values(
        Symbol symbol, string? placeholder, IReadOnlyList<string> before, string word) => placeholder switch
        {
            "FILE" or "FILES" => Paths(word, ".toml"),
            "PATH" or "PARTS" => Paths(word, ""),
            "DIR" => Paths(word, null),
            _ when placeholder?.StartsWith("FILE.", StringComparison.Ordinal) == true => Paths(word, Path.GetExtension(placeholder)),
            _ when placeholder == SweptInputs.Placeholder => Inputs(before),
            _ => Choices(symbol),
        };

    /// <summary>The inputs that may be moved in the scenario that is named on the line.</summary>
    private static IEnumerable<string> Inputs(IReadOnlyList<string> before)
    {
        if (before.FirstOrDefault(w => w.EndsWith(".toml", StringComparison.Ordinal) && File.Exists(w)) is not { } file)
        {
            return [];
        }

        try
        {
            return [.. SweptInputs.Of(ScenarioReader.ReadFile(file).Scenario).Select(i => i + "=")];
        }
        catch (ScenarioException)
        {
            // The command will say what is wrong with it; here silence serves best.
            return [];
        }
    }

    /// <summary>Folders, and files of an ending; folders alone where it is null. As the word has begun: relative stays relative.</summary>
    private static IEnumerable<string> Paths(string word, string? ending)
    {
        string folder = word[..(word.LastIndexOf('/') + 1)];
        string start = word[folder.Length..];
        try
        {
            var here = new DirectoryInfo(folder.Length == 0 ? "." : folder);
            return
            [
                .. here.EnumerateFileSystemInfos()
                    .Where(i => i.Name.StartsWith(start, StringComparison.Ordinal) && (start.Length > 0 || !i.Name.StartsWith('.')))
                    .Where(i => i is DirectoryInfo || (ending is not null && i.Name.EndsWith(ending, StringComparison.OrdinalIgnoreCase)))
                    .Select(i => folder + i.Name + (i is DirectoryInfo ? "/" : "")).Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private static IEnumerable<string> Starting(IEnumerable<string> words, string start) =>
        words.Where(w => w.StartsWith(start, StringComparison.Ordinal));
}
