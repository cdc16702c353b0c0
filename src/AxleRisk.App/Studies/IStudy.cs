using AxleRisk.App.Documents.Forms;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;

namespace AxleRisk.App.Studies;

/// <summary>A study whatever its question and result: what a list of all studies needs to know of one.</summary>
internal interface IStudy
{
    /// <summary>The command that runs it.</summary>
    string Name { get; }

    /// <summary>The heading of its section in a report.</summary>
    string Title { get; }

    /// <summary>The form of its figures as JSON.</summary>
    IJsonForm Form { get; }

    /// <summary>Why it does not apply to a scenario and what would help, as the end of a sentence; null where it applies.</summary>
    string? WhyNot(Scenario scenario);

    /// <summary>How it is run in parts.</summary>
    Parting PartingOf(Scenario scenario);

    /// <summary>What a report runs of it.</summary>
    /// <param name="model">The scenario made ready.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="scale">How many times the usual evaluations.</param>
    StudyStep Step(LifeModel model, ulong seed, double scale);

    /// <summary>Runs a step and tells what came out.</summary>
    /// <exception cref="StudyException">The study has no answer to this scenario.</exception>
    MadeStudy Make(ScenarioDocument document, LifeModel model, StudyStep step, HeadlineSource headlines, RunOptions options);

    /// <summary>Hands the study over with its types.</summary>
    T Accept<T>(IStudyVisitor<T> visitor);
}

/// <summary>How a study is run in parts: whether its passes (<see cref="IWorkShare"/>) build on one another.</summary>
internal enum Parting
{
    /// <summary>It is run whole.</summary>
    None,

    /// <summary>No part needs another's share: each ends when it has done its own, and the merge does what is left.</summary>
    Apart,

    /// <summary>A pass needs all shares of the one before: the parts go on together.</summary>
    Together,
}

/// <summary>Something made of every study: a command, say.</summary>
internal interface IStudyVisitor<out T>
{
    T Visit<TQuestion, TResult>(Study<TQuestion, TResult> study)
        where TResult : class;
}

/// <summary>
/// One study of a report: what the command of its name would run.
/// </summary>
/// <param name="Study">The study.</param>
/// <param name="Settings">Evaluations (of each case), seed, sampling plan.</param>
/// <param name="Cases">The number of scenarios that it evaluates.</param>
/// <param name="Work">The evaluations of all its questions together, for progress.</param>
/// <param name="IsUsual">Whether the command decides itself how many of its evaluations it needs, as where none are stated.</param>
internal sealed record StudyStep(IStudy Study, StudySettings Settings, int Cases, long Work, bool IsUsual)
{
    /// <summary>The command.</summary>
    public string Command => Study.Name;

    /// <summary>What the command line needs beside the scenario, with a space before it; empty for nothing.</summary>
    public string Arguments { get; init; } = "";
}
