using AxleRisk.Core.Sampling;

namespace AxleRisk.Core.Studies;

/// <summary>
/// How the evaluations of a study are divided: into replicates where the sampling plan has no error of its own that could be
/// told from inside (Latin hypercube, Sobol'), and each replicate into blocks. Blocks of different replicates alternate, so
/// that any run of blocks from the first on has replicates of nearly one size.
/// </summary>
internal sealed class BlockPlan
{
    /// <summary>Replicates of a plan whose samples depend on one another: 15 degrees of freedom.</summary>
    private const int DependentReplicates = 16;

    /// <summary>Below this many evaluations a replicate would be too small to mean anything.</summary>
    private const int LeastRowsOfReplicate = 32;

    private readonly long rowsOfReplicate;

    /// <summary>Divides a study of <paramref name="columns"/> columns.</summary>
    /// <exception cref="StudyException">The sampling plan has fewer dimensions.</exception>
    public BlockPlan(StudySettings settings, int columns)
    {
        bool independent = settings.Sampling == SamplingPlan.Names[0];
        Replicates = independent || settings.Evaluations < DependentReplicates * LeastRowsOfReplicate ? 1 : DependentReplicates;
        rowsOfReplicate = settings.Evaluations / Replicates;
        Blocks = Replicates * ((rowsOfReplicate + StudySettings.BlockSize - 1) / StudySettings.BlockSize);
        Plan = SamplingPlan.FromName(settings.Sampling, rowsOfReplicate);
        if (columns > Plan.Dimensions)
        {
            throw new StudyException(
                $"{settings.Sampling} sampling has {Plan.Dimensions} dimensions and this scenario needs {columns}: choose --sampling {SamplingPlan.Names[0]}");
        }
    }

    public int Replicates { get; }

    public long Blocks { get; }

    public SamplingPlan Plan { get; }

    /// <summary>The evaluations of all blocks: those asked for, less what does not divide by the replicates.</summary>
    public long Evaluations => Replicates * rowsOfReplicate;

    /// <summary>What a block consists of.</summary>
    public (int Replicate, long First, int Rows) this[long block]
    {
        get
        {
            long first = block / Replicates * StudySettings.BlockSize;
            return ((int)(block % Replicates), first, (int)Math.Min(StudySettings.BlockSize, rowsOfReplicate - first));
        }
    }

    /// <summary>The name of a replicate's random streams; empty where there is but one.</summary>
    public string StreamOf(int replicate) => Replicates == 1 ? "" : $"r{replicate}";
}
