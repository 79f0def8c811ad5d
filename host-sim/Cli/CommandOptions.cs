using System;
using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace LubeController.Cli;

/// <summary>The sorts of options that commands share. What an option cannot take is refused on one line that names it and the remedy.</summary>
internal static class CommandOptions
{
    /// <summary>An option whose text must not be empty.</summary>
    /// <param name="name">As it is typed, hyphens included.</param>
    /// <param name="help">Stands for the text in the usage.</param>
    /// <param name="description">Told by the help.</param>
    public static Option<string> Text(string name, string help, string description)
    {
        var option = new Option<string>(name) { HelpName = help, Description = description };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && string.IsNullOrWhiteSpace(result.Tokens[0].Value))
                result.AddError($"{name} is empty: give {help}.");
        });
        return option;
    }

    /// <summary>An option that names a file.</summary>
    /// <param name="name">As it is typed, hyphens included.</param>
    /// <param name="description">Told by the help.</param>
    public static Option<string> File(string name, string description) => Text(name, "FILE", description);

    /// <summary>An option that is a whole number, in plain digits.</summary>
    /// <param name="name">As it is typed, hyphens included.</param>
    /// <param name="minimum">The smallest number it takes, 0 or more.</param>
    /// <param name="maximum">The largest.</param>
    /// <param name="description">Told by the help.</param>
    /// <param name="preset">Its value where it is not given; null for none.</param>
    /// <param name="help">Stands for the number in the usage.</param>
    /// <param name="of">What it counts, for the refusal, such as <c> of megabytes</c>.</param>
    public static Option<long?> Whole(string name, long minimum, long maximum, string description, long? preset = null, string help = "N", string of = "")
    {
        var option = new Option<long?>(name)
        {
            HelpName = help,
            Description = description,
            CustomParser = result =>
            {
                string text = result.Tokens.Count == 0 ? "" : result.Tokens[0].Value;
                if (long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out long number) && number >= minimum && number <= maximum)
                    return number;
                result.AddError(string.Create(CultureInfo.InvariantCulture, $"{name} is '{text}': give a whole number{of} from {minimum} to {maximum}."));
                return null;
            },
        };
        if (preset != null)
            option.DefaultValueFactory = _ => preset;
        return option;
    }

    /// <summary>Lets an option refuse all but a few words.</summary>
    public static void AcceptOneOf(this Option<string> option, params IReadOnlyCollection<string> words)
    {
        option.Validators.Add(result => Refuse(result, result.Tokens, option.Name, words));
        option.CompletionSources.Add([.. words]);
    }

    /// <summary>Lets an argument refuse all but a few words.</summary>
    public static void AcceptOneOf(this Argument<string> argument, params IReadOnlyCollection<string> words)
    {
        argument.Validators.Add(result => Refuse(result, result.Tokens, argument.Name, words));
        argument.CompletionSources.Add([.. words]);
    }

    /// <summary>Says what a command does with what was asked.</summary>
    public static void Does(this Command command, Func<ParseResult, ExitCode> run) => command.SetAction(parsed => (int)run(parsed));

    /// <summary>Says what a command does with what was asked, until it is cancelled.</summary>
    public static void Does(this Command command, Func<ParseResult, CancellationToken, ExitCode> run) =>
        command.SetAction((parsed, cancel) => Task.FromResult((int)run(parsed, cancel)));

    private static void Refuse(SymbolResult result, IReadOnlyList<Token> given, string name, IReadOnlyCollection<string> words)
    {
        if (given.Count == 1 && !words.Contains(given[0].Value))
            result.AddError($"{name} is '{given[0].Value}': give one of {string.Join(", ", words)}.");
    }
}
