using System.CommandLine;
using System.Text;
using AxleRisk.App.Text;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk manual DIR</c>, hidden: writes the pages for <c>man</c>, made of the commands, for a package.</summary>
internal static class ManualCommand
{
    public static Command Create(Terminal terminal, RootCommand root)
    {
        var folder = new Argument<string>("DIR") { Description = "the folder to write to" };
        var command = new Command("manual", "write the pages for man") { folder };
        command.Hidden = true;
        command.SetAction(parsed =>
        {
            string target = parsed.GetValue(folder)!;
            string? trouble = OutputFile.Trouble(target, WholeFolder.Make);
            foreach (Command page in root.Subcommands.Where(c => !c.Hidden).SelectMany(c => c.Subcommands.Prepend(c)).Prepend(root))
            {
                string path = Path.Combine(target, ManualPage.NameOf(root, page) + ".1");
                trouble ??= OutputFile.Trouble(path, p => WholeFile.Write(p, Encoding.UTF8.GetBytes(ManualPage.Of(root, page))));
            }

            if (trouble is not null)
            {
                terminal.Error.WriteLine($"{Product.Name}: {trouble}");
                return ExitCode.Failed;
            }

            terminal.Out.WriteLine($"Written: {Printable.Line(target)}");
            return ExitCode.Done;
        });
        return command;
    }
}
