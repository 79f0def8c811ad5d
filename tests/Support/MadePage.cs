using System;
using System.IO;

namespace LubeController.Tests.Support;

/// <summary>
/// Pages and schemas that code makes, whole or in part. A test holds each to its code; <c>tests/renew</c> runs the same tests with
/// LUBEBENCH_RENEW set, and they write the page instead.
/// </summary>
public static class MadePage
{
    /// <summary>What is renewed: <c>pages</c>, <c>mutants</c>, or nothing.</summary>
    public static string Renews { get; } = Environment.GetEnvironmentVariable("LUBEBENCH_RENEW") ?? "";

    /// <summary>Holds a page to what code makes of it, or writes it.</summary>
    /// <param name="path">The page, from the root of the repository.</param>
    /// <param name="make">Makes the page from the one that is there: puts in what is made and leaves what people wrote.</param>
    /// <exception cref="InvalidDataException">The page is not what code makes; the message names the first line that differs.</exception>
    public static void Check(string path, Func<string, string> make)
    {
        string file = Path.Combine(Repository.Root, path);
        string page = File.ReadAllText(file).ReplaceLineEndings("\n");
        string made = make(page);
        if (made == page)
            return;
        if (Renews != "pages")
            throw new InvalidDataException($"{path} is not what code makes: {FirstDifference(page, made)}; renew it with 'tests/renew'");
        File.WriteAllText(file, made);
    }

    /// <summary>A page in which what stands between two texts, both left as they are, is replaced.</summary>
    /// <exception cref="InvalidDataException">The page does not hold one of them.</exception>
    public static string Between(string page, string start, string end, string made)
    {
        int at = page.IndexOf(start, StringComparison.Ordinal) + start.Length;
        int over = at < start.Length ? -1 : page.IndexOf(end, at, StringComparison.Ordinal);
        if (over < 0)
            throw new InvalidDataException($"the page does not hold '{start.Trim()}' with '{end.Trim()}' behind it");
        return page[..at] + made + page[over..];
    }

    private static string FirstDifference(string page, string made)
    {
        string[] there = page.Split('\n');
        string[] wanted = made.Split('\n');
        int line = 0;
        while (line < there.Length && line < wanted.Length && there[line] == wanted[line])
            line++;
        return $"line {line + 1} is '{(line < there.Length ? there[line] : "")}' where '{(line < wanted.Length ? wanted[line] : "")}' is made";
    }
}
