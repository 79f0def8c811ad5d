using System.Collections.Generic;
using LubeController.Plant.Fields;

namespace LubeController.Plant.Contacts;

/// <summary>The words for contacts.</summary>
internal static class ContactWords
{
    /// <summary>Contacts of switches.</summary>
    public static IReadOnlyList<Choice<SwitchContact>> Switches { get; } =
        [new("normally-open", SwitchContact.NormallyOpen), new("normally-closed", SwitchContact.NormallyClosed)];

    /// <summary>How long a contact bounces.</summary>
    public static IReadOnlyList<Choice<BounceDescription>> Bounces { get; } =
        [new("none", BounceDescription.None), new("usual", BounceDescription.Usual), new("reed", BounceDescription.Reed)];
}
