using System;
using System.IO;
using System.Text;

namespace LubeController.Files.Reading;

/// <summary>Reads a file's text, refusing what no script is: too large, not UTF-8, binary.</summary>
public static class SourceText
{
    /// <summary>Largest file read, bytes. A script is written by hand; a larger file is something else.</summary>
    public const int LargestBytes = 1024 * 1024;

    /// <summary>The text of a file, or null where a problem was added.</summary>
    /// <param name="path">Path as the user gave it.</param>
    /// <param name="problems">Takes what is wrong.</param>
    public static string? Read(string path, ProblemList problems)
    {
        if (Directory.Exists(path))
            return RefusePath(path, "a folder, not a file", "name a file, for instance 'plant.yaml'", problems);
        try
        {
            var file = new FileInfo(path);
            if (!file.Exists)
                return RefusePath(path, $"there is no such file ({file.FullName})", "correct the path or add the file", problems);
            if (file.Length > LargestBytes)
                return Refuse(path, $"the file has {file.Length} bytes, at most {LargestBytes} are read", "split it; what several files share goes into one that they name under 'based-on'", problems, $"{file.Length} bytes");
            return Decode(path, File.ReadAllBytes(path), problems);
        }
        catch (Exception reason) when (reason is IOException or UnauthorizedAccessException)
        {
            return Refuse(path, $"the file cannot be read ({reason.Message})", "see that it is a readable file", problems);
        }
    }

    /// <summary>The text of bytes, or null where a problem was added. A UTF-8 byte order mark is allowed and dropped.</summary>
    public static string? Decode(string path, ReadOnlySpan<byte> bytes, ProblemList problems)
    {
        string? mark = ForeignMark(bytes);
        if (mark != null)
            return Refuse(path, $"the file is encoded as {mark}", "save it as UTF-8", problems, mark);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            bytes = bytes[3..];
        int nul = bytes.IndexOf((byte)0);
        if (nul >= 0)
            return RefuseAt(path, bytes, nul, "0x00", "a NUL byte: the file is binary, or UTF-16 without a mark", "save it as UTF-8 text", problems);
        int bad = FirstInvalid(bytes);
        if (bad >= 0)
            return RefuseAt(path, bytes, bad, $"0x{bytes[bad]:X2}", $"the byte 0x{bytes[bad]:X2} is not UTF-8 here", "save the file as UTF-8; write 'degC' instead of a degree sign of an old encoding", problems);
        string text = Encoding.UTF8.GetString(bytes);
        int control = FirstControl(text);
        if (control >= 0)
            return RefuseAt(path, bytes, Encoding.UTF8.GetByteCount(text.AsSpan(0, control)), $"U+{(int)text[control]:X4}", $"the control character U+{(int)text[control]:X4} has no place in a text", "delete it", problems);
        return text;
    }

    private static string? ForeignMark(ReadOnlySpan<byte> bytes)
    {
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0x00, 0x00]))
            return "UTF-32, low byte first";
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x00, 0x00, 0xFE, 0xFF]))
            return "UTF-32, high byte first";
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return "UTF-16, low byte first";
        return bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) ? "UTF-16, high byte first" : null;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        int at = 0;
        while (at < bytes.Length)
        {
            if (Rune.DecodeFromUtf8(bytes[at..], out _, out int used) != System.Buffers.OperationStatus.Done)
                return at;
            at += used;
        }

        return -1;
    }

    private static int FirstControl(string text)
    {
        for (int index = 0; index < text.Length; index++)
        {
            char character = text[index];
            if ((char.IsControl(character) && character is not ('\n' or '\r' or '\t' or '\u0085')) || character == '\ufeff')
                return index;
        }

        return -1;
    }

    private static string? RefusePath(string path, string message, string remedy, ProblemList problems)
    {
        problems.Add(new Problem(new SourcePlace(path, 1, 1), Problem.WholeFile, path, message, remedy) { IsOfPath = true });
        return null;
    }

    private static string? Refuse(string path, string message, string remedy, ProblemList problems, string? value = null)
    {
        problems.Add(new Problem(new SourcePlace(path, 1, 1), Problem.WholeFile, value ?? path, message, remedy));
        return null;
    }

    private static string? RefuseAt(string path, ReadOnlySpan<byte> bytes, int at, string value, string message, string remedy, ProblemList problems)
    {
        ReadOnlySpan<byte> before = bytes[..at];
        int line = before.Count((byte)'\n') + 1;
        int column = at - before.LastIndexOf((byte)'\n');
        problems.Add(new Problem(new SourcePlace(path, line, column), Problem.WholeFile, value, message, remedy));
        return null;
    }
}
