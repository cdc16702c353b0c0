namespace AxleRisk.Files.Writing;

/// <summary>What has become of a file since it was read or saved.</summary>
public enum DiskState
{
    /// <summary>Nothing.</summary>
    Same,

    /// <summary>It holds something else, is there although it is new, or can no longer be read.</summary>
    Changed,

    /// <summary>It is no longer there.</summary>
    Gone,

    /// <summary>Nor is its folder.</summary>
    FolderGone,
}
