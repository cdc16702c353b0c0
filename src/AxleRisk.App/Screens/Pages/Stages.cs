using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>A study in two stages: a quick answer after a moment, then the one asked for, which has the command's digits.</summary>
internal static class Stages
{
    /// <summary>The evaluations of both stages: what progress counts to.</summary>
    public static long Requested(long evaluations, long quick) => evaluations > quick ? evaluations + quick : evaluations;

    /// <summary>Runs the stages.</summary>
    /// <param name="settings">Those of the second stage.</param>
    /// <param name="quick">Evaluations of the first; it is left out where the second has no more.</param>
    /// <param name="cases">How many scenarios each evaluation is made of: what progress is to be counted in.</param>
    /// <param name="options">Progress over both stages, cancellation.</param>
    /// <param name="publish">Takes the quick answer.</param>
    /// <param name="study">The study of given settings.</param>
    /// <param name="recordOf">The run behind a result.</param>
    public static T Run<T>(
        StudySettings settings, long quick, int cases, RunOptions options, Action<T> publish, Func<StudySettings, RunOptions, T> study, Func<T, RunRecord> recordOf)
        where T : class
    {
        T? first = null;
        long spent = 0;
        if (settings.Evaluations > quick)
        {
            try
            {
                first = study(settings with { Evaluations = quick }, options);
                publish(first);
            }
            catch (StudyException)
            {
                // Too few for an answer; the second stage says so if it has none either.
            }

            spent = quick * cases;
            if (first is not null && options.Cancellation.IsCancellationRequested)
            {
                return first;
            }
        }

        T second;
        try
        {
            second = study(settings, options with { Progress = options.Progress is { } report ? done => report(spent + done) : null });
        }
        catch (OperationCanceledException) when (first is not null)
        {
            return first;
        }

        // Ended early, it may rest on less than the quick answer does.
        RunRecord run = recordOf(second);
        return first is not null && run.IsPartial && run.Evaluations < recordOf(first).Evaluations ? first : second;
    }
}
