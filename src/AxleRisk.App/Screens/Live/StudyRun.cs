using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using AxleRisk.Core.Studies;

namespace AxleRisk.App.Screens.Live;

/// <summary>
/// One study run in the background: started, stopped, continued, ended early, started anew. Whoever draws reads
/// <see cref="Standing"/> and <see cref="Result"/> at any time; a start replaces the run before it, whose answer is dropped.
/// Answers to earlier states of the scenario are kept, and shown again where it comes back to one.
/// </summary>
/// <param name="clock">The clock, for elapsed times only.</param>
/// <param name="present">The state the scenario is in now; without it the last answer is the one shown.</param>
/// <param name="wake">Called, on any thread, when there is news.</param>
/// <typeparam name="T">The result; an immutable record.</typeparam>
internal sealed class StudyRun<T>(TimeProvider clock, Func<int>? present = null, Action? wake = null) : IDisposable
    where T : class
{
    /// <summary>Whole answers kept: as many changes as a reader may go back and forth.</summary>
    private const int MostKept = 20;

    private readonly Lock changing = new();
    private Job? job;
    private Answer? answer;
    private ImmutableList<Answer> kept = [];
    private int revision;
    private int news;

    /// <summary>The result for the scenario as it is, else the last one, whole or so far; null before there is any.</summary>
    public T? Result => Shown?.Result;

    /// <summary>The state of the scenario that <see cref="Result"/> answers.</summary>
    public int State => Shown?.State ?? -1;

    /// <summary>Whether <see cref="Result"/> is that of a study still under way.</summary>
    public bool IsSnapshot => Shown?.IsSnapshot ?? false;

    /// <summary>The time the run behind <see cref="Result"/> took.</summary>
    public TimeSpan ResultElapsed => Shown?.Standing.Elapsed ?? TimeSpan.Zero;

    /// <summary>Where the present run stands; of an answer shown again, where that one stood.</summary>
    public RunStanding Standing => Volatile.Read(ref job) is var running && running?.State != present?.Invoke() && Kept is { } again
        ? again.Standing : running?.Standing ?? RunStanding.Idle;

    /// <summary>Changes with every new result and phase; a running study's progress is read from <see cref="Standing"/>.</summary>
    public int Revision => Volatile.Read(ref revision);

    /// <summary>The results so far, whole or not, and the runs that ended without one.</summary>
    public int News => Volatile.Read(ref news);

    /// <summary>Completes when the present run has ended.</summary>
    public Task Completion => Volatile.Read(ref job)?.Completion ?? Task.CompletedTask;

    private Answer? Shown => Volatile.Read(ref answer) is var last && last?.State != present?.Invoke() && Kept is { } again ? again : last;

    /// <summary>The whole answer kept for the scenario as it is; null where there is none.</summary>
    private Answer? Kept => present?.Invoke() is int now ? Volatile.Read(ref kept).Find(a => a.State == now) : null;

    /// <summary>Starts a study; one that is under way is cancelled and its answer dropped.</summary>
    /// <param name="state">The state of the scenario it answers.</param>
    /// <param name="requested">Evaluations it will spend.</param>
    /// <param name="study">The study; its second argument takes results so far.</param>
    public void Start(int state, long requested, Func<RunOptions, Action<T>, T> study)
    {
        lock (changing)
        {
            job?.Cancel();
            var next = new Job(this, clock, state, requested);
            Volatile.Write(ref job, next);
            next.Begin(study);
        }

        Changed();
    }

    /// <summary>Stops the run after the blocks under way, to be continued.</summary>
    public void Stop()
    {
        job?.Stop();
        Changed();
    }

    /// <summary>Continues a stopped run.</summary>
    public void Continue()
    {
        job?.Continue();
        Changed();
    }

    /// <summary>Ends the run now; what it has is its result, marked as partial.</summary>
    public void EndNow()
    {
        job?.End();
        Changed();
    }

    /// <summary>Cancels the run under way, if any; the last result stays.</summary>
    public void Cancel()
    {
        lock (changing)
        {
            job?.Cancel();
            Volatile.Write(ref job, null);
        }

        Changed();
    }

    /// <inheritdoc/>
    public void Dispose() => Cancel();

    private void Changed() => Interlocked.Increment(ref revision);

    private void Tell()
    {
        Changed();
        Interlocked.Increment(ref news);
        wake?.Invoke();
    }

    /// <summary>Takes a result from a job, unless another has taken its place.</summary>
    private void Take(Job from, T result, bool isSnapshot)
    {
        lock (changing)
        {
            if (job != from)
            {
                return;
            }

            var taken = new Answer(result, from.State, isSnapshot, from.Standing);
            Volatile.Write(ref answer, taken);
            if (!isSnapshot)
            {
                ImmutableList<Answer> others = kept.RemoveAll(a => a.State == taken.State);
                Volatile.Write(ref kept, (others.Count < MostKept ? others : others.RemoveAt(0)).Add(taken));
            }
        }

        Tell();
    }

    private sealed record Answer(T Result, int State, bool IsSnapshot, RunStanding Standing);

    /// <summary>One run: a thread of its own, a gate that stops it and a token that ends it.</summary>
    [SuppressMessage("Reliability", "CA1001",
        Justification = "neither holds anything outside the process, and the reader may press a key for a run that has just ended")]
    private sealed class Job(StudyRun<T> owner, TimeProvider clock, int state, long requested)
    {
        private readonly ManualResetEventSlim gate = new(true);
        private readonly CancellationTokenSource cancellation = new();
        private readonly TaskCompletionSource completion = new(TaskCreationOptions.RunContinuationsAsynchronously);
        private readonly Stopwatch watch = new(clock);
        private long done;
        private volatile RunPhase phase = RunPhase.Running;
        private volatile string? failure;

        public int State => state;

        public Task Completion => completion.Task;

        public RunStanding Standing => new(phase, Interlocked.Read(ref done), requested, watch.Elapsed, failure);

        public void Begin(Func<RunOptions, Action<T>, T> study) =>
            new Thread(() => Run(study)) { IsBackground = true, Name = "study" }.Start();

        public void Stop()
        {
            if (phase == RunPhase.Running)
            {
                phase = RunPhase.Stopped;
                watch.Stop();
                gate.Reset();
            }
        }

        public void Continue()
        {
            if (phase == RunPhase.Stopped)
            {
                phase = RunPhase.Running;
                watch.Start();
                gate.Set();
            }
        }

        public void End()
        {
            cancellation.Cancel();
            Continue();
        }

        public void Cancel() => End();

        private void Run(Func<RunOptions, Action<T>, T> study)
        {
            try
            {
                var options = new RunOptions { Progress = Report, Cancellation = cancellation.Token };
                T result = study(options, snapshot => owner.Take(this, snapshot, isSnapshot: true));
                Ended(RunPhase.Done);
                owner.Take(this, result, isSnapshot: false);
            }
            catch (OperationCanceledException)
            {
                EndedWithout(RunPhase.Idle);
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                // Whatever a study throws is the reader's to see; the console goes on.
                failure = e.Message;
                EndedWithout(RunPhase.Failed);
            }
            finally
            {
                completion.SetResult();
            }
        }

        private void Ended(RunPhase end)
        {
            watch.Stop();
            phase = end;
        }

        private void EndedWithout(RunPhase end)
        {
            Ended(end);
            owner.Tell();
        }

        private void Report(long evaluations)
        {
            // Blocks end out of order: the count must not fall.
            long before = Interlocked.Read(ref done);
            while (evaluations > before)
            {
                long seen = Interlocked.CompareExchange(ref done, evaluations, before);
                if (seen == before)
                {
                    break;
                }

                before = seen;
            }

            // Held here while stopped: a thread that waits between two blocks changes no digit.
            gate.Wait();
        }
    }
}
