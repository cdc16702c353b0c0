using System.CommandLine;
using System.Text;
using AxleRisk.App.Text;

namespace AxleRisk.App.Commands;

/// <summary>A page for <c>man</c> of a command, in the macros of man(7).</summary>
internal static class ManualPage
{
    /// <summary>What a page is called: axlerisk, or axlerisk-risk, or axlerisk-cluster-slurm.</summary>
    public static string NameOf(Command root, Command command) => command == root ? Product.Name
        : $"{NameOf(root, command.Parents.OfType<Command>().First())}-{command.Name}";

    /// <summary>The page of a command; that of the root lists the others.</summary>
    public static string Of(Command root, Command command)
    {
        var page = new StringBuilder();
        string name = NameOf(root, command);
        page.Append($".TH {name.ToUpperInvariant()} 1 \"\" \"{Product.Name} {Product.Version}\"\n");
        page.Append($".SH NAME\n{name} \\- {Escape(command.Description ?? "")}\n");
        page.Append($".SH SYNOPSIS\n.B {Product.Name}\n{Usage(root, command)}\n");
        if (command.Arguments.Count > 0)
        {
            page.Append(".SH ARGUMENTS\n");
            foreach (Argument argument in command.Arguments)
            {
                page.Append($".TP\n.I {Escape(argument.HelpName ?? argument.Name)}\n{Escape(argument.Description ?? "")}\n");
            }
        }

        page.Append(".SH OPTIONS\n");
        foreach (Option option in Suggestions.Options(root, command))
        {
            string names = string.Join(", ", Suggestions.Names(option).Where(n => n.StartsWith('-')));
            page.Append($".TP\n.B {Escape(names + Value(option))}\n{Escape(option.Description ?? "")}\n");
        }

        if (command.Subcommands.Count > 0)
        {
            page.Append(".SH COMMANDS\n");
            foreach (Command other in command.Subcommands.Where(c => !c.Hidden))
            {
                page.Append($".TP\n.B {other.Name}\n{Escape(other.Description ?? "")}\n");
            }
        }

        page.Append(".SH EXIT STATUS\n0 answered, 1 the run failed, 2 bad usage or bad input, 130 ended by Ctrl\\-C, 143 by SIGTERM.\n");
        page.Append($".SH CAUTION\n{Escape(Caution.Sentence["Caution: ".Length..])}\n");
        page.Append(".SH SEE ALSO\n").Append(command.Subcommands.Count > 0
            ? string.Join(", ", command.Subcommands.Where(c => !c.Hidden).Select(c => $"{Escape(NameOf(root, c))}(1)"))
            : $"{Product.Name}(1)").Append('\n');
        return page.ToString();
    }

    private static string Usage(Command root, Command command) => command.Subcommands.Count > 0
        ? $"{(command == root ? "" : $".B {command.Name}\n")}.I COMMAND\n[options]"
        : $".B {Escape(NameOf(root, command)[(Product.Name.Length + 1)..].Replace('-', ' '))}\n{string.Concat(command.Arguments.Select(a => $".I {Escape(a.HelpName ?? a.Name)}\n"))}[options]";

    private static string Value(Option option) =>
        option.Arity.MaximumNumberOfValues == 0 || option.ValueType == typeof(bool) ? ""
        : option.HelpName is { } name ? " " + name
        : Suggestions.Choices(option).ToArray() is { Length: > 0 } choices ? " " + string.Join('|', choices) : "";

    /// <summary>Text that troff takes as it stands: a hyphen stays one, and no line begins with a mark of its own.</summary>
    private static string Escape(string text)
    {
        string plain = text.Replace("\\", "\\e").Replace("-", "\\-");
        return plain.StartsWith('.') || plain.StartsWith('\'') ? "\\&" + plain : plain;
    }
}
