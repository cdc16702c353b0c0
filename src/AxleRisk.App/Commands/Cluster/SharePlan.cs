using System.CommandLine;
using AxleRisk.App.Studies;
using AxleRisk.App.Text;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary>What is asked of a study that is to be run in parts, and the folder that is made of it.</summary>
internal sealed class SharePlan
{
    private const int MostParts = 10_000;

    private readonly CommonOptions options = new(null);
    private readonly RootCommand root;

    public SharePlan(RootCommand root)
    {
        this.root = root;
        options.Evaluations.Required = true;
        options.Evaluations.Description = "evaluations of the whole study";
        Parts.Validators.Add(result =>
        {
            if (!(int.TryParse(result.Tokens is [var token] ? token.Value : "", out int parts) && parts is >= 1 and <= MostParts))
            {
                result.AddError(
                    $"--parts must be a whole number from 1 to {MostParts}, such as 16, not \"{string.Join(' ', result.Tokens)}\"");
            }
        });
        Study.AcceptOnlyFromAmong([.. StudyBook.All.Select(s => s.Name)]);
    }

    public Option<string?> Parts { get; } = new("--parts") { Description = "the number of parts", HelpName = "K", Required = true };

    public Option<string> Study { get; } = new("--study")
    { Description = "the study", HelpName = "STUDY", DefaultValueFactory = _ => StudyBook.Risk.Name };

    public Option<string?> Folder { get; } = new("--out")
    { Description = "the folder to make (default: the scenario's name and the study's, here)", HelpName = "DIR" };

    public Argument<string[]> Asked { get; } = new("OPTIONS")
    { Description = "after --, options of the study, such as -- --distances 50000", Arity = ArgumentArity.ZeroOrMore };

    /// <summary>A command of this name with the options of a plan.</summary>
    public Command Command(string name, string description) => new(name, description)
    { options.File, Asked, options.Evaluations, Parts, Study, options.Seed, options.Sampling, options.Threads, Folder };

    /// <summary>Threads of a part; 1 where nobody states a number.</summary>
    public int Threads(ParseResult parsed) => int.Parse(parsed.GetValue(options.Threads) ?? "1");

    /// <summary>Makes the folder.</summary>
    /// <exception cref="ScenarioException">The scenario is not right.</exception>
    /// <exception cref="StudyException">The study cannot be run in parts, or the folder cannot be made.</exception>
    public SharedStudy Make(ParseResult parsed)
    {
        string file = parsed.GetValue(options.File)!;
        ScenarioDocument document = options.Read(parsed);
        IStudy study = StudyBook.All.First(s => s.Name == parsed.GetValue(Study));
        if (study.PartingOf(document.Scenario) == Parting.None)
        {
            IEnumerable<string> parted = StudyBook.All.Where(s => s.PartingOf(document.Scenario) != Parting.None).Select(s => s.Name);
            throw new StudyException($"{study.Name} is run whole; these can be run in parts: {string.Join(", ", parted)}");
        }

        if (study.WhyNot(document.Scenario) is { } whyNot)
        {
            throw new StudyException($"{document.FileName}: {whyNot}");
        }

        string[] arguments =
        [
            options.Evaluations.Name, parsed.GetValue(options.Evaluations)!,
            .. parsed.GetValue(options.Seed) is { } seed ? [options.Seed.Name, seed] : Array.Empty<string>(),
            .. parsed.GetValue(options.Sampling) is { } sampling ? [options.Sampling.Name, sampling] : Array.Empty<string>(),
            .. parsed.GetValue(Asked) ?? [],
        ];
        Check(study, file, arguments);
        string folder = Path.GetFullPath(parsed.GetValue(Folder) ?? $"{Path.GetFileNameWithoutExtension(file)}-{study.Name}");
        var shared = new SharedStudy(
            folder, study.Name, document.Digest, Product.Version, LifeModel.Version, int.Parse(parsed.GetValue(Parts)!),
            study.PartingOf(document.Scenario) == Parting.Together, [.. arguments])
        {
            ScenarioName = document.Sources[0].Name,
        };
        if (Refusal(folder) is { } refusal)
        {
            throw new StudyException($"will not write into {folder}: {refusal}; name another folder with --out");
        }

        shared.Write(document);
        _ = SharedRun.Arguments(shared, 0);
        return shared;
    }

    /// <summary>What was made, in words.</summary>
    public static string Told(SharedStudy study, params string[] files) => Printable.Line(
        $"Made {study.Folder}: {study.Study} in {study.Parts} part{(study.Parts == 1 ? "" : "s")}; {string.Join(", ", files)}.");

    private void Check(IStudy study, string file, string[] arguments)
    {
        SharedRun.Refuse(arguments);
        ParseResult asked = root.Parse([study.Name, file, .. arguments]);
        if (asked.Errors.Count > 0)
        {
            throw new StudyException($"{study.Name} cannot be asked so: {asked.Errors[0].Message}");
        }
    }

    private static string? Refusal(string folder)
    {
        try
        {
            return File.Exists(folder) ? "it is a file, not a folder"
                : Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any() ? "it is not empty" : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return e.Message;
        }
    }
}
