using AxleRisk.Core.Outcomes;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Pages;

/// <summary>A study in stages: a quick answer after a moment, surer ones, then the one asked for, which has the command's digits.</summary>
/// <param name="Quick">Evaluations of the stages before the last, ascending; those that are not fewer than the last's are left out.</param>
internal sealed record Stages(params long[] Quick)
{
    /// <summary>The evaluations of each stage.</summary>
    public IEnumerable<long> All(long evaluations) => [.. Before(evaluations), evaluations];

    /// <summary>Runs the stages.</summary>
    /// <param name="settings">Those of the last stage.</param>
    /// <param name="cases">How many scenarios each evaluation is made of: what progress is counted in.</param>
    /// <param name="options">Progress over all stages, cancellation.</param>
    /// <param name="publish">Takes the answers of the stages before the last.</param>
    /// <param name="study">The study of given settings.</param>
    /// <param name="recordOf">The run behind a result.</param>
    public T Run<T>(StudySettings settings, int cases, RunOptions options, Action<T> publish, Func<StudySettings, RunOptions, T> study,
        Func<T, RunRecord> recordOf)
        where T : class
    {
        T? best = null;
        long spent = 0;
        foreach (long evaluations in All(settings.Evaluations))
        {
            bool isLast = evaluations == settings.Evaluations;
            long before = spent;
            try
            {
                RunOptions counting = options with { Progress = options.Progress is { } report ? done => report(before + done) : null };
                T answer = study(settings with { Evaluations = evaluations }, counting);

                // Ended early, a stage may rest on less than the one before it.
                RunRecord run = recordOf(answer);
                best = best is not null && run.IsPartial && run.Evaluations < recordOf(best).Evaluations ? best : answer;
            }
            catch (StudyException) when (!isLast)
            {
                // Too few for an answer; the last stage says so if it has none either.
            }
            catch (OperationCanceledException) when (best is not null)
            {
                return best;
            }

            if (isLast || (best is not null && options.Cancellation.IsCancellationRequested))
            {
                break;
            }

            if (best is not null)
            {
                publish(best);
            }

            spent += evaluations * cases;
        }

        return best!;
    }

    private IEnumerable<long> Before(long evaluations) => Quick.Where(q => q < evaluations);
}
