using System.Collections.Generic;
using LubeController.Files.SettingsFiles;
using LubeController.RuleTemplate;

namespace LubeController.Scripts.ScriptFiles;

/// <summary>The rest rules that are compiled in: a user's own rule is added here, and nowhere else on the bench.</summary>
public static class RestRules
{
    /// <summary>Every rule a settings file may choose.</summary>
    public static IReadOnlyList<RestRuleKind> All { get; } =
    [
        new RestRuleKind("warm-rest", () => new WarmRestRule()),
    ];
}
