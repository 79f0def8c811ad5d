using System.CommandLine;

namespace LubeController.Cli;

/// <summary>An option whose text must not be empty.</summary>
internal static class TextOption
{
    /// <summary>Makes it.</summary>
    /// <param name="name">As it is typed, hyphens included.</param>
    /// <param name="help">Stands for the text in the usage.</param>
    /// <param name="description">Told by the help.</param>
    public static Option<string> Make(string name, string help, string description)
    {
        var option = new Option<string>(name) { HelpName = help, Description = description };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && string.IsNullOrWhiteSpace(result.Tokens[0].Value))
                result.AddError($"{name} is empty: give {help}.");
        });
        return option;
    }

    /// <summary>Makes one that takes a file.</summary>
    /// <param name="name">As it is typed, hyphens included.</param>
    /// <param name="description">Told by the help.</param>
    public static Option<string> File(string name, string description) => Make(name, "FILE", description);
}
