using System.Text.Json.Nodes;
using AxleRisk.App.Answers;
using AxleRisk.App.Documents;
using AxleRisk.App.Documents.Forms;
using AxleRisk.App.Text;
using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Sampling;
using AxleRisk.Core.Scenarios;
using AxleRisk.Core.Studies;
using AxleRisk.Files;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Studies;

/// <summary>
/// One study, described once: its command, its page, its section of a report and its documents are made of this. To add a
/// study, derive from this and name it in <see cref="StudyBook"/>.
/// </summary>
/// <typeparam name="TQuestion">What it is asked beyond the scenario.</typeparam>
/// <typeparam name="TResult">The result; an immutable record.</typeparam>
internal abstract class Study<TQuestion, TResult> : IStudy
    where TResult : class
{
    /// <inheritdoc/>
    public abstract string Name { get; }

    /// <inheritdoc/>
    public abstract string Title { get; }

    /// <summary>What it tells, as the line of help.</summary>
    public abstract string About { get; }

    /// <summary>What its numbers mean and what they do not, in the reader's words: paragraphs, for the console.</summary>
    public abstract IReadOnlyList<string> Explanation { get; }

    /// <summary>What stands on its page before there is a result: what it would tell.</summary>
    public abstract string Invitation { get; }

    /// <inheritdoc/>
    public string? WhyNot(Scenario scenario) => WhyNot(scenario, Usual(scenario, evaluationsStated: false));

    /// <summary>
    /// Why it does not apply to a scenario and a question, and what would help, as the end of a sentence; null where it applies.
    /// </summary>
    public virtual string? WhyNot(Scenario scenario, TQuestion question) => null;

    /// <inheritdoc/>
    public virtual Parting PartingOf(Scenario scenario) => Parting.None;

    /// <summary>Evaluations where nobody states a number.</summary>
    public abstract long DefaultEvaluations { get; }

    /// <summary>What is said of <c>--evaluations</c> in the help.</summary>
    public virtual string EvaluationsHelp => $"evaluations of the damage model (default {DefaultEvaluations:#,0})";

    /// <summary>The sampling plan where nobody states one.</summary>
    public virtual string Sampling(LifeModel model) => SamplingPlan.Names[0];

    /// <summary>What the command line can ask beyond the scenario; null for nothing.</summary>
    public virtual QuestionOptions<TQuestion>? Options() => null;

    /// <summary>The question where nobody asks another.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="evaluationsStated">Whether somebody has stated the number of evaluations.</param>
    public abstract TQuestion Usual(Scenario scenario, bool evaluationsStated);

    /// <summary>Evaluations for a question where nobody states a number.</summary>
    public virtual long EvaluationsFor(LifeModel model, TQuestion question) => DefaultEvaluations;

    /// <summary>
    /// What the command line needs beside the scenario to ask a question, with a space before it; empty for the usual one.
    /// </summary>
    public virtual string Arguments(TQuestion question) => "";

    /// <summary>Writes what the command line asks to be written besides.</summary>
    /// <returns>Why it could not be written, as a sentence; null where it was, or nothing was asked.</returns>
    public virtual string? WriteBesides(System.CommandLine.ParseResult parsed, ScenarioDocument document, TResult result) => null;

    /// <summary>The number of scenarios that are evaluated with each sample.</summary>
    public virtual int Cases(Scenario scenario, TQuestion question) => 1;

    /// <summary>All evaluations, for progress.</summary>
    public virtual long Work(Scenario scenario, TQuestion question, long evaluations) => evaluations * Cases(scenario, question);

    /// <summary>Runs it.</summary>
    /// <exception cref="StudyException">It has no answer to this scenario.</exception>
    public abstract TResult Run(LifeModel model, StudySettings settings, TQuestion question, HeadlineSource headlines, RunOptions options);

    /// <summary>The run behind a result.</summary>
    public abstract RunRecord RunOf(TResult result);

    /// <summary>How it was done, in words, for the line that tells how to repeat the run.</summary>
    public abstract string Method(TResult result);

    /// <summary>What is said of the speed of a run, behind the time it took.</summary>
    public virtual string Speed(TResult result, TimeSpan elapsed) => "";

    /// <summary>What it says, on every surface.</summary>
    public abstract IEnumerable<Block> Blocks(ScenarioDocument document, TResult result);

    /// <summary>The scenario whose defaults in force are told of beside the answer.</summary>
    public virtual Scenario Told(Scenario scenario) => scenario;

    /// <summary>Its figures as JSON.</summary>
    public abstract JsonForm<TResult> Form { get; }

    /// <inheritdoc/>
    IJsonForm IStudy.Form => Form;

    /// <summary>The header of its table for other programs.</summary>
    public abstract string[] Header { get; }

    /// <summary>The rows of that table.</summary>
    public abstract IEnumerable<string[]> Rows(TResult result);

    /// <summary>The notes that stand below every answer.</summary>
    public IEnumerable<Block> Notes(ScenarioDocument document) => NoteBlocks.Of(document, Frame.Assumed(Told(document.Scenario)));

    /// <summary>The run in words, as a sentence.</summary>
    public string RunInWords(TResult result) => Frame.Run(RunOf(result), Method(result));

    /// <summary>The lines below an answer on a terminal or a page.</summary>
    public IEnumerable<TextLine> Foot(TResult result, TimeSpan elapsed) =>
        Frame.Foot(RunInWords(result), Frame.Partial(RunOf(result)), elapsed, Speed(result, elapsed));

    /// <summary>The JSON document.</summary>
    /// <param name="document">The scenario.</param>
    /// <param name="result">The result.</param>
    /// <param name="elapsed">The time it took; null where that is not told.</param>
    /// <param name="command">The command, where it is not the study's own.</param>
    public JsonObject Document(ScenarioDocument document, TResult result, TimeSpan? elapsed, string? command = null) =>
        WholeDocument.Write(
            command ?? Name, document, Form, result, (RunOf(result), elapsed), Frame.Assumed(Told(document.Scenario)));

    /// <inheritdoc/>
    public virtual StudyStep Step(LifeModel model, ulong seed, double scale)
    {
        bool isUsual = scale == 1 && EndsByItself;
        long evaluations = isUsual ? DefaultEvaluations : Math.Clamp((long)Math.Round(scale * TypicalEvaluations), Least, Most);
        var settings = new StudySettings(evaluations, seed, Sampling(model));
        TQuestion question = Usual(model.Scenario, !isUsual);
        return new StudyStep(
            this, settings, Cases(model.Scenario, question), Work(model.Scenario, question, evaluations), isUsual)
        {
            Arguments = Arguments(question),
        };
    }

    /// <inheritdoc/>
    public MadeStudy Make(ScenarioDocument document, LifeModel model, StudyStep step, HeadlineSource headlines, RunOptions options)
    {
        TResult result = Run(model, step.Settings, Usual(model.Scenario, !step.IsUsual), headlines, options);
        return new MadeStudy(
            step, result, [.. Blocks(document, result), .. OwnNotes(document.Scenario)], RunInWords(result),
            Document(document, result, null), Header, [.. Rows(result)]);
    }

    // In a report the scenario's own assumptions stand among its inputs.
    private IEnumerable<Block> OwnNotes(Scenario scenario) =>
        NoteBlocks.Assumed([.. Frame.Assumed(Told(scenario)).Except(Frame.Assumed(scenario))]);

    /// <inheritdoc/>
    public T Accept<T>(IStudyVisitor<T> visitor) => visitor.Visit(this);

    /// <summary>The fewest evaluations that it takes.</summary>
    protected virtual long Least => 1;

    /// <summary>The most evaluations that it takes.</summary>
    protected virtual long Most => long.MaxValue;

    /// <summary>Whether it ends by itself before its evaluations are spent, where nobody states their number.</summary>
    protected virtual bool EndsByItself => false;

    /// <summary>About the evaluations that it spends where it ends by itself; else those that it spends.</summary>
    protected virtual long TypicalEvaluations => DefaultEvaluations;
}
