using AxleRisk.App.Screens.Live;
using AxleRisk.App.Studies;
using AxleRisk.Core.Studies;
using AxleRisk.Reports.Content;

namespace AxleRisk.App.Screens.Pages;

/// <summary>The page of a study, made of its description: it shows what the study's command prints.</summary>
/// <param name="session">The open scenario.</param>
/// <param name="dialogs">Asks for the number of evaluations.</param>
/// <param name="study">The study.</param>
/// <param name="name">Its name on the tabs.</param>
/// <param name="stages">The quick answers before the whole run; null for none.</param>
internal class AnswerPage<TQuestion, TResult>(
    Session session, IDialogs dialogs, Study<TQuestion, TResult> study, string name, Stages? stages = null)
    : StudyPage<TResult>(session, dialogs)
    where TResult : class
{
    public override string Name => name;

    public override IReadOnlyList<string> Explanation => study.Explanation;

    protected override string? Unavailable =>
        study.WhyNot(Session.Document.Scenario) is { } whyNot ? StudyBook.Sentence(whyNot) : null;

    protected override long DefaultEvaluations => study.DefaultEvaluations;

    protected override string Invitation => $"{study.Invitation} Press r to run it.";

    protected override string Sampling => study.Sampling(Session.Model);

    /// <summary>The question as it is asked on this page.</summary>
    protected virtual TQuestion Question => study.Usual(Session.Document.Scenario, ChosenEvaluations is not null);

    protected override long Requested(StudySettings settings)
    {
        long Work(long evaluations) => study.Work(Session.Document.Scenario, Question, evaluations);
        return stages is null ? Work(settings.Evaluations) : stages.All(settings.Evaluations).Sum(Work);
    }

    protected override TResult Study(LifeModel model, StudySettings settings, RunOptions options, Action<TResult> publish)
    {
        TQuestion question = Question;
        HeadlineSource headlines = Session.Risk.Headlines(model);
        TResult Run(StudySettings s, RunOptions o) => study.Run(model, s, question, headlines, o);
        return stages is null
            ? Run(settings, options)
            : stages.Run(settings, study.Cases(model.Scenario, question), options, publish, Run, study.RunOf);
    }

    protected override IReadOnlyList<PageLine> Show(TResult result, int width, int height) =>
        [.. PageLine.Of([.. study.Blocks(Session.Document, result), .. Notes], width), PageLine.Empty, .. Foot(result)];

    /// <summary>The notes that stand below every answer.</summary>
    protected IEnumerable<Block> Notes => study.Notes(Session.Document);

    /// <summary>The run behind the answer, and the caution.</summary>
    protected IEnumerable<PageLine> Foot(TResult result) => PageLine.Of(study.Foot(result, Run.ResultElapsed));
}
