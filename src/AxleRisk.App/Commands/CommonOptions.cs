using System.CommandLine;
using System.Globalization;
using AxleRisk.App.Commands.Cluster;
using AxleRisk.App.Studies;
using AxleRisk.Core.Analyses.Risk;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Files.Cluster;

namespace AxleRisk.App.Commands;

/// <summary>The arguments and options that the commands share.</summary>
internal sealed class CommonOptions
{
    public CommonOptions(long? defaultEvaluations)
    {
        Evaluations = WholeNumber("--evaluations", "N", 1, 1_000_000_000_000,
            $"evaluations of the damage model (default {defaultEvaluations:#,0})");
        Evaluations.Aliases.Add("-n");
        Threads = WholeNumber("--threads", "N", 1, 4096, "threads to use (default: all cores); no digit depends on it");
        DefaultEvaluations = defaultEvaluations ?? 0;
        Sampling.AcceptOnlyFromAmong([.. SamplingPlan.Names]);
    }

    /// <summary>Folders that data files of a scenario may lie in besides its own; of every command.</summary>
    public static Option<string[]> DataFolders { get; } = new("--data-folder")
    {
        Description = "a folder that data files of a scenario may lie in, besides its own",
        HelpName = "DIR",
        Recursive = true,
    };

    public Argument<string> File { get; } = new("FILE") { Description = "the scenario, a TOML file" };

    public Option<string?> Evaluations { get; }

    public Option<string?> Seed { get; } = SeedOption();

    public Option<string?> Sampling { get; } = new("--sampling") { Description = "sampling plan" };

    public Option<string?> Threads { get; }

    public Option<bool> Json { get; } = new("--json") { Description = "print one JSON document instead of text" };

    public OutputFile Csv { get; } = new("--csv") { Description = "also write the figures to a CSV file", HelpName = "PATH" };

    private long DefaultEvaluations { get; }

    /// <summary>A command of this name with the options of a run.</summary>
    public Command StudyCommand(string name, string description) =>
        new(name, description) { File, Evaluations, Seed, Sampling, Threads, Json, Csv };

    /// <summary>A command of this name that samples nothing.</summary>
    public Command PlainCommand(string name, string description) => new(name, description) { File, Json, Csv };

    /// <summary>Reads the scenario.</summary>
    /// <exception cref="ScenarioException">It cannot be read or is no valid scenario.</exception>
    public ScenarioDocument Read(ParseResult parsed) => ScenarioReader.ReadFile(parsed.GetValue(File)!, parsed.GetValue(DataFolders));

    public StudySettings Settings(ParseResult parsed, long? otherDefault = null, string? defaultSampling = null) => new(
        parsed.GetValue(Evaluations) is { } n ? ToWholeNumber(n)!.Value : otherDefault ?? DefaultEvaluations,
        parsed.GetValue(Seed) is { } s ? ulong.Parse(s) : StudySettings.DefaultSeed,
        parsed.GetValue(Sampling) ?? defaultSampling ?? SamplingPlan.Names[0]);

    /// <summary>The failure probabilities that risk gives with these options.</summary>
    public HeadlineSource Headlines(ParseResult parsed, LifeModel model) => Studies.Headlines.Of(
        model, Settings(parsed, RiskAnalysis.DefaultEvaluations, RiskAnalysis.DefaultSampling(model)));

    /// <summary>Runs a study with its progress on the terminal, and times it.</summary>
    /// <param name="parsed">The arguments.</param>
    /// <param name="terminal">Where progress is drawn.</param>
    /// <param name="evaluations">Evaluations the study will spend.</param>
    /// <param name="cancellation">Ends the run.</param>
    /// <param name="study">The study.</param>
    public (T Result, TimeSpan Elapsed) Run<T>(
        ParseResult parsed, Terminal terminal, long evaluations, Func<RunOptions, T> study, CancellationToken cancellation)
    {
        long start = terminal.Clock.GetTimestamp();
        using IDisposable running = terminal.Runs.Begin();
        using var progress = new ProgressLine(terminal, evaluations);
        using FolderShare? share = SharedRun.ShareOf(parsed, cancellation);
        T result = SharedRun.Run(share, () => study(new RunOptions
        {
            Threads = parsed.GetValue(Threads) is { } t ? (int)ToWholeNumber(t)!.Value : Environment.ProcessorCount,
            Progress = progress.Report,
            Cancellation = cancellation,
            Share = share,
        }));
        return (result, terminal.Clock.GetElapsedTime(start));
    }

    /// <summary>A whole number kept as text, so that a wrong one gets our own words.</summary>
    private static Option<string?> WholeNumber(string name, string help, long least, long most, string description)
    {
        var option = new Option<string?>(name) { Description = description, HelpName = help };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (ToWholeNumber(text) is not long value || value < least || value > most)
            {
                result.AddError($"{name} must be a whole number from {least} to {most}, such as {Math.Min(most, 100_000)}{(most > 100_000 ? " or 1e5" : "")}, not \"{text}\"");
            }
        });
        return option;
    }

    /// <summary>A whole number, also one written with a power of ten; null where it is none.</summary>
    private static long? ToWholeNumber(string text) =>
        decimal.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowExponent | NumberStyles.AllowDecimalPoint, null,
            out decimal value)
            && value == decimal.Truncate(value) && Math.Abs(value) <= long.MaxValue
            ? (long)value
            : null;

    private static Option<string?> SeedOption()
    {
        var option = new Option<string?>("--seed")
        { Description = $"seed of the random numbers (default {StudySettings.DefaultSeed})", HelpName = "S" };
        option.Validators.Add(result =>
        {
            string text = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
            if (!ulong.TryParse(text, out ulong _))
            {
                result.AddError($"--seed must be a whole number from 0 to {ulong.MaxValue}, not \"{text}\"");
            }
        });
        return option;
    }
}
