using System.Collections.Generic;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Linq;

namespace LubeController.Cli;

/// <summary>Options and arguments that are one of a few words; another word is refused on one line that names both.</summary>
internal static class ChoiceText
{
    /// <summary>Lets an option refuse other words.</summary>
    public static void AcceptOneOf(this Option<string> option, params IReadOnlyCollection<string> words)
    {
        option.Validators.Add(result => Refuse(result, result.Tokens, option.Name, words));
        option.CompletionSources.Add([.. words]);
    }

    /// <summary>Lets an argument refuse other words.</summary>
    public static void AcceptOneOf(this Argument<string> argument, params IReadOnlyCollection<string> words)
    {
        argument.Validators.Add(result => Refuse(result, result.Tokens, argument.Name, words));
        argument.CompletionSources.Add([.. words]);
    }

    private static void Refuse(SymbolResult result, IReadOnlyList<Token> given, string name, IReadOnlyCollection<string> words)
    {
        if (given.Count == 1 && !words.Contains(given[0].Value))
            result.AddError($"{name} is '{given[0].Value}': give one of {string.Join(", ", words)}.");
    }
}
