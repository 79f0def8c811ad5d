using System;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.IO;
using System.Linq;
using LubeController.Files.Reading;

namespace LubeController.Cli;

/// <summary>A mistyped option would pass for a path or a name.</summary>
internal static class UnknownOptions
{
    /// <summary>Lets a command refuse them.</summary>
    public static void RefuseIn(Command command)
    {
        foreach (Argument argument in command.Arguments)
            argument.Validators.Add(given => Refuse(given, command));
    }

    private static void Refuse(ArgumentResult given, Command command)
    {
        foreach (Token token in given.Tokens)
        {
            if (!token.Value.StartsWith("--", StringComparison.Ordinal) || File.Exists(token.Value))
                continue;
            string name = token.Value.Split('=')[0];
            given.AddError($"There is no option '{name}'; {NearestName.Remedy(name, command.Options.Select(option => option.Name).ToArray())}");
        }
    }
}
