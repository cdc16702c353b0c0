namespace AxleRisk.Core.Studies;

/// <summary>
/// The work of a study that several runs of it do together. A study is a row of passes, each a number of blocks whose results are numbers
/// that depend on nothing but what is told of the passes before. A run does its share of a pass's blocks and has the others' from the other
/// runs; what follows from them each run finds for itself. So every run has the digits of a study that was run alone.
/// </summary>
public interface IWorkShare
{
    /// <summary>Does this run's share of the next pass.</summary>
    /// <param name="blocks">The number of blocks of the pass.</param>
    /// <param name="work">Does the blocks from a first one up to but not including an end, and gives their rows of numbers; how many
    /// rows it gives is its own affair. It throws an <see cref="OperationCanceledException"/> where the run was cancelled.</param>
    /// <returns>The rows of all shares, in the order of the blocks, bit for bit.</returns>
    /// <exception cref="PartDoneException">This run's share is done, and nobody awaits the others'.</exception>
    IReadOnlyList<double[]> Pass(long blocks, Func<long, long, IReadOnlyList<double[]>> work);
}

/// <summary>Ends a run that was to do only its part of a study: that part is done.</summary>
public sealed class PartDoneException() : Exception("the part is done")
{
    /// <summary>Asks questions that need nothing of one another: a run that does a part does its part of each before it ends.</summary>
    /// <exception cref="PartDoneException">At least one of them ended so.</exception>
    public static void Each(params ReadOnlySpan<Action> questions)
    {
        PartDoneException? ended = null;
        foreach (Action question in questions)
        {
            try
            {
                question();
            }
            catch (PartDoneException e)
            {
                ended = e;
            }
        }

        if (ended is not null)
        {
            throw ended;
        }
    }
}
