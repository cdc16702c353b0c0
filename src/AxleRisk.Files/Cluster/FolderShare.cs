using System.Text;
using AxleRisk.Core.Studies;

namespace AxleRisk.Files.Cluster;

/// <summary>
/// Shares the work of a study through a folder. Each part does its share of a pass and writes it there. Where the parts go together, a part
/// with nothing left of its own does the shares that nobody alive has begun, and waits for the others; else it ends. Whoever merges
/// runs the study with all shares from the folder.
/// </summary>
public sealed class FolderShare : IWorkShare, IDisposable
{
    private readonly SharedStudy study;
    private readonly int part;
    private readonly TimeSpan patience;
    private readonly CancellationToken cancellation;
    private readonly PartSign? sign;
    private int pass;
    private bool isFinished;

    /// <summary>Takes part.</summary>
    /// <param name="study">The study.</param>
    /// <param name="part">The number of the part, from 1; 0 for who merges.</param>
    /// <param name="patience">A part without a sign of life for so long is taken for dead.</param>
    /// <param name="cancellation">Ends the waiting.</param>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    public FolderShare(SharedStudy study, int part, TimeSpan patience, CancellationToken cancellation)
    {
        (this.study, this.part, this.patience, this.cancellation) = (study, part, patience, cancellation);
        if (part > 0)
        {
            sign = new PartSign();
            Trouble(() =>
            {
                sign.Give(PartFolder.Alive(study, part));
                File.Delete(PartFolder.Ended(study, part));
            });
        }
    }

    /// <summary>Whether this is a part, rather than who merges.</summary>
    public bool IsPart => part > 0;

    /// <inheritdoc/>
    public IReadOnlyList<double[]> Pass(long blocks, Func<long, long, IReadOnlyList<double[]>> work)
    {
        pass++;
        IReadOnlyList<double[]> Share(int of) => work(blocks * (of - 1) / study.Parts, blocks * of / study.Parts);
        if (part == 0)
        {
            return Merged(() => work(0, blocks));
        }

        if (!study.IsTogether)
        {
            if (PartFolder.Read(study, part, pass) is null)
            {
                Do(part, Share);
            }

            throw new PartDoneException();
        }

        Together(Share);
        return Gathered();
    }

    /// <summary>Says in the folder that the part has nothing left to do.</summary>
    /// <exception cref="IOException">The folder cannot be written.</exception>
    public void Finish()
    {
        WholeFile.Write(PartFolder.Done(study, part), Encoding.UTF8.GetBytes($"{pass}\n"));
        isFinished = true;
    }

    /// <summary>Ends the signs of life; a part that is not done leaves word of that.</summary>
    public void Dispose()
    {
        sign?.Dispose();
        if (IsPart && !isFinished)
        {
            WholeFile.Write(PartFolder.Ended(study, part), Encoding.UTF8.GetBytes(PartSign.Here));
        }
    }

    // Own work first, then that of the next ones, so that two who help do not begin with the same.
    private void Together(Func<int, IReadOnlyList<double[]>> share)
    {
        if (PartFolder.IsThere(study, part, pass) && PartFolder.Read(study, part, pass) is null)
        {
            File.Delete(PartFolder.PathOf(study, part, pass));
        }

        TimeSpan pause = TimeSpan.FromMilliseconds(10);
        int[] left = [.. Enumerable.Range(0, study.Parts).Select(i => ((part - 1 + i) % study.Parts) + 1)];
        while (true)
        {
            left = [.. left.Where(of => !PartFolder.IsThere(study, of, pass))];
            if (left.Length == 0)
            {
                return;
            }

            if (left.FirstOrDefault(of => sign!.TryGive(PartFolder.Begun(study, of, pass), patience)) is > 0 and var free)
            {
                if (!PartFolder.IsThere(study, free, pass))
                {
                    Do(free, share);
                }

                sign!.End(PartFolder.Begun(study, free, pass));
                pause = TimeSpan.FromMilliseconds(10);
                continue;
            }

            cancellation.WaitHandle.WaitOne(pause);
            cancellation.ThrowIfCancellationRequested();
            pause = TimeSpan.FromMilliseconds(Math.Min(1000, pause.TotalMilliseconds * 1.5));
        }
    }

    private void Do(int of, Func<int, IReadOnlyList<double[]>> share)
    {
        IReadOnlyList<double[]> rows = share(of);
        Trouble(() => PartFolder.Write(study, of, pass, rows));
    }

    private List<double[]> Gathered() => [.. Enumerable.Range(1, study.Parts).SelectMany(of => PartFolder.Read(study, of, pass)
        ?? throw SharedStudy.Bad(PartFolder.PathOf(study, of, pass), "it is not as it was written: remove it and send its part again"))];

    private IReadOnlyList<double[]> Merged(Func<IReadOnlyList<double[]>> whole)
    {
        int[] missing = [.. Enumerable.Range(1, study.Parts).Where(of => !PartFolder.IsThere(study, of, pass))];

        // What merging alone asks for, beyond the passes of the parts, it does itself.
        bool isBeyond = missing.Length == study.Parts
            && Enumerable.Range(1, study.Parts).Any(of => PartFolder.PassesOf(study, of) is { } passes && passes < pass);
        return isBeyond ? whole() : missing.Length == 0 ? Gathered() : throw SharedStudy.Bad(
            study.Folder, $"part{(missing.Length == 1 ? "" : "s")} {PartFolder.Numbers(missing)} of {study.Parts} "
                + $"{(missing.Length == 1 ? "has" : "have")} not given {(missing.Length == 1 ? "its" : "their")} share; "
                + "axlerisk cluster status tells how to send again what is missing");
    }

    private static void Trouble(Action act)
    {
        try
        {
            act();
        }
        catch (Exception e) when (FileBytes.IsFileTrouble(e))
        {
            throw new IOException($"the folder of the study cannot be written: {FileBytes.WriteReason(e)}", e);
        }
    }
}
