using System.CommandLine;
using System.Text;
using System.Text.Json.Nodes;
using AxleRisk.App.Documents;
using AxleRisk.App.Schemas;
using AxleRisk.App.Text;
using AxleRisk.Files;

namespace AxleRisk.App.Commands;

/// <summary><c>axlerisk schema [NAME]</c>: the JSON Schema of the scenario file or of a command's JSON.</summary>
internal static class SchemaCommand
{
    public static Command Create(Terminal terminal)
    {
        var name = new Argument<string?>("NAME")
        {
            Description = $"{SchemaBook.Scenario} (the default), or a command for its JSON: {string.Join(", ", SchemaBook.Names.Skip(1))}",
            Arity = ArgumentArity.ZeroOrOne,
        };
        name.HelpName = "NAME";
        name.CompletionSources.Add([.. SchemaBook.Names]);
        name.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: string text }] && !SchemaBook.Names.Contains(text))
            {
                result.AddError($"there is no schema \"{text}\"; there are {string.Join(", ", SchemaBook.Names)}");
            }
        });
        var output = new Option<string?>("--out")
        {
            Description = "with NAME the file to write it to; without NAME a folder, and every schema is written there",
            HelpName = "PATH",
        };
        var command = new Command("schema", "print the JSON Schema of the scenario file or of a command's JSON") { name, output };
        command.SetAction(parsed => (parsed.GetValue(name), parsed.GetValue(output)) switch
        {
            (var one, null) => Print(SchemaBook.Of(one ?? SchemaBook.Scenario), terminal),
            (null, string folder) => Write(folder, SchemaBook.Names.Select(n => (FileOf(folder, n), n)), terminal),
            (string one, string path) => Write(
                Path.GetDirectoryName(path) ?? "", [(Directory.Exists(path) ? FileOf(path, one) : path, one)], terminal),
        });
        return command;
    }

    private static string FileOf(string folder, string name) => Path.Combine(folder, $"axlerisk-{name}.schema.json");

    private static int Print(JsonObject schema, Terminal terminal)
    {
        terminal.Out.WriteLine(Json.Write(schema));
        return ExitCode.Done;
    }

    private static int Write(string folder, IEnumerable<(string Path, string Name)> files, Terminal terminal)
    {
        if (folder.Length > 0 && OutputFile.Trouble(folder, WholeFolder.Make) is { } noFolder)
        {
            terminal.Error.WriteLine($"{Product.Name}: {noFolder}");
            return ExitCode.Failed;
        }

        foreach ((string path, string name) in files)
        {
            byte[] text = Encoding.UTF8.GetBytes(Json.Write(SchemaBook.Of(name)) + "\n");
            if (OutputFile.Trouble(path, p => WholeFile.Write(p, text)) is { } trouble)
            {
                terminal.Error.WriteLine($"{Product.Name}: {trouble}");
                return ExitCode.Failed;
            }

            terminal.Out.WriteLine($"Written: {Printable.Line(path)}");
        }

        return ExitCode.Done;
    }
}
