using System;
using System.IO;
using System.Text;

namespace LubeController.Tests.Support;

/// <summary>A folder of its own for one test, gone afterwards; begins with the sample plant and settings.</summary>
public sealed class TempFolder : IDisposable
{
    public TempFolder()
    {
        Root = Directory.CreateTempSubdirectory("lubebench-").FullName;
        foreach (string file in Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "Data")))
            File.Copy(file, Path.Combine(Root, Path.GetFileName(file)));
    }

    public string Root { get; }

    public string At(string name) => Path.Combine(Root, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text, new UTF8Encoding(false));
        return At(name);
    }

    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(At(name), bytes);
        return At(name);
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
