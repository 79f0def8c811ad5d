using System;
using System.Collections.Generic;
using LubeController.Core;

namespace LubeController.Files.SettingsFiles;

/// <summary>The settings of one controller, with the user's rest rule if one is chosen.</summary>
/// <param name="Values">Accepted settings.</param>
/// <param name="Rule">The rule chosen, or null.</param>
public sealed record ControlSettings(Settings Values, ChosenRule? Rule);

/// <summary>A user's rest rule with the settings it was given.</summary>
/// <param name="Kind">The rule.</param>
/// <param name="Values">A value for each of the rule's own settings, in the unit of its specification.</param>
public sealed record ChosenRule(RestRuleKind Kind, IReadOnlyList<int> Values)
{
    /// <summary>Makes the rule anew with its settings, as a power-up does.</summary>
    public IRestRule Make()
    {
        IRestRule rule = Kind.Make();
        for (int index = 0; index < Values.Count; index++)
            rule.Set(index, Values[index]);
        return rule;
    }
}

/// <summary>A rest rule that is compiled in, under the name a settings file chooses it by.</summary>
/// <param name="Name">Lower case with hyphens.</param>
/// <param name="Make">Makes one with its presets.</param>
public sealed record RestRuleKind(string Name, Func<IRestRule> Make);
