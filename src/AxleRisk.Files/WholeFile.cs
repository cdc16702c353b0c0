namespace AxleRisk.Files;

/// <summary>Writes a file whole or not at all: beside its place first, then renamed.</summary>
internal static class WholeFile
{
    public static void Write(string path, Action<Stream> write)
    {
        string beside = $"{path}.{Environment.ProcessId}.part";
        try
        {
            using (FileStream stream = File.Create(beside))
            {
                write(stream);
            }

            File.Move(beside, path, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
