using System.CommandLine;
using AxleRisk.App.Studies;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands.Cluster;

/// <summary>
/// The run of a study of which this process does a part, or merges the parts: the study's own command with a hidden option, so that parts,
/// merge and whole run cannot differ.
/// </summary>
internal static class SharedRun
{
    /// <summary>A part without a sign of life for so long is taken for dead.</summary>
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    // What belongs to the run of a part or to the merge, not to the question; a stranger's folder must not make a part write elsewhere.
    private static readonly string[] NotAsked =
        ["--threads", "--json", "--csv", "--out", "--part", "--resume", "--until-cov", "--card", "--data-folder", "--shared"];

    /// <summary>Which part this is of which folder: <c>3:DIR</c>; 0 merges.</summary>
    public static Option<string?> Option { get; } = new("--shared") { Hidden = true, Recursive = true };

    /// <summary>The command line of a part or of the merge.</summary>
    /// <exception cref="ScenarioException">The folder is not as it was made.</exception>
    /// <exception cref="StudyException">It was made by another version of the program.</exception>
    public static IEnumerable<string> Arguments(SharedStudy study, int part)
    {
        if (study.Version != Product.Version || study.ModelVersion != LifeModel.Version)
        {
            throw new StudyException(
                $"{study.Path} was made by version {study.Version} with model {study.ModelVersion}, and this program is "
                + $"{Product.Version} with model {LifeModel.Version}: use one program for all, or make the folder anew");
        }

        if (StudyBook.All.All(s => s.Name != study.Study))
        {
            throw new StudyException($"{study.Path} names no study: {study.Study}");
        }

        if (ScenarioReader.ReadFile(study.Scenario).Digest != study.Digest)
        {
            throw new StudyException($"{study.Scenario} or a data file of it has changed since the folder was made: make the folder anew");
        }

        Refuse(study.Arguments);
        return [study.Study, study.Scenario, .. study.Arguments, Option.Name, $"{part}:{study.Folder}"];
    }

    /// <summary>Refuses arguments that no study in parts may be given.</summary>
    /// <exception cref="StudyException">There is one.</exception>
    public static void Refuse(IEnumerable<string> arguments)
    {
        if (arguments.FirstOrDefault(a => a.StartsWith('@') || NotAsked.Contains(a.Split('=', ':')[0])) is { } wrong)
        {
            throw new StudyException($"{wrong} cannot be asked of a study that is run in parts: leave it out");
        }
    }

    /// <summary>With whom a run shares its work; null for a whole run.</summary>
    public static FolderShare? ShareOf(ParseResult parsed, CancellationToken cancellation) =>
        parsed.GetValue(Option)?.Split(':', 2) is [var part, var folder] && int.TryParse(part, out int number)
            ? new FolderShare(SharedStudy.Read(folder), number, Patience, cancellation) : null;

    /// <summary>Runs a study; a part of one has no answer to give and ends here.</summary>
    /// <exception cref="PartDoneException">The part is done.</exception>
    public static T Run<T>(FolderShare? share, Func<T> study)
    {
        if (share is not { IsPart: true })
        {
            return study();
        }

        try
        {
            study();
        }
        catch (PartDoneException)
        {
            // Where no part needs the others' shares.
        }

        share.Finish();
        throw new PartDoneException();
    }
}
