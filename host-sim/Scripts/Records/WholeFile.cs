using System;
using System.IO;
using System.Text;

namespace LubeController.Scripts.Records;

/// <summary>Writes files whole or not at all: under a temporary name first, renamed when complete.</summary>
public static class WholeFile
{
    /// <summary>Writes the file that an option of a command names; where it cannot, the message names option, path and remedy.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static void Write(string option, string path, Action<TextWriter> write)
    {
        try
        {
            Write(path, write);
        }
        catch (Exception reason) when (reason is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"{option}: '{path}' cannot be written: {reason.Message.TrimEnd('.')}; name a place where you may write", reason);
        }
    }

    /// <summary>Writes a file, UTF-8 without mark, lines as the writer gives them; makes its folder.</summary>
    /// <exception cref="IOException">It cannot be written; nothing is left behind under its name that was not there before.</exception>
    public static void Write(string path, Action<TextWriter> write)
    {
        ArgumentNullException.ThrowIfNull(write);
        string full = Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        string temporary = full + ".part";
        try
        {
            using (var writer = new StreamWriter(temporary, append: false, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)))
            {
                writer.NewLine = "\n";
                write(writer);
            }

            File.Move(temporary, full, overwrite: true);
        }
        finally
        {
            File.Delete(temporary);
        }
    }
}
