using System.Collections.Immutable;

namespace AxleRisk.Core.Analyses.Shares;

/// <summary>What shares are to be found of: players that cost evaluations, scale players that cost none, and the outputs.</summary>
internal abstract class ShareProblem
{
    /// <summary>The greatest number of players that a subset can name.</summary>
    public const int MostPlayers = 127;

    /// <summary>For each player that is evaluated, its columns.</summary>
    public abstract ImmutableArray<ImmutableArray<int>> Columns { get; }

    /// <summary>The number of columns of a row of values.</summary>
    public abstract int ColumnCount { get; }

    /// <summary>The dependence of players; each member has one column. Null where all are independent.</summary>
    public virtual ScoreDependence? Dependence => null;

    /// <summary>
    /// The number of scale players that cost no evaluation; their numbers follow those of the evaluated ones. An output may have more
    /// scale players: the last of those that are evaluated for another.
    /// </summary>
    public virtual int ScalePlayers => 0;

    /// <summary>The outputs of which shares are wanted.</summary>
    public abstract ImmutableArray<JointMoment> Moments { get; }

    /// <summary>The numbers that a row gives.</summary>
    public virtual int Outputs => 1;

    /// <summary>The number of all players.</summary>
    public int Players => Columns.Length + ScalePlayers;

    /// <summary>One thread's way to the model.</summary>
    /// <param name="capacity">The most rows of one evaluation.</param>
    public abstract ShareSample CreateSample(int capacity);
}

/// <summary>One thread's draws and evaluations.</summary>
internal abstract class ShareSample
{
    /// <summary>Draws base rows of one of the two independent samples.</summary>
    /// <param name="replicate">The replicate: each is an independent sample of its own.</param>
    /// <param name="second">Which of the two samples.</param>
    /// <param name="first">The first row's number in the replicate.</param>
    /// <param name="values">Takes the values, by column; all of its length is filled.</param>
    /// <param name="scores">Takes the normal scores of the dependent players, by member.</param>
    public abstract void Draw(int replicate, bool second, long first, double[][] values, double[][] scores);

    /// <summary>The values of a dependent player from its scores.</summary>
    public abstract void FromScores(int member, double[] scores, int count, double[][] values);

    /// <summary>What rows of values give.</summary>
    /// <param name="values">The values, by column.</param>
    /// <param name="count">The number of rows.</param>
    /// <param name="outputs">Takes the numbers, by number and row.</param>
    /// <param name="at">The place of the first row among them.</param>
    public abstract void Evaluate(double[][] values, int count, double[][] outputs, int at);
}
