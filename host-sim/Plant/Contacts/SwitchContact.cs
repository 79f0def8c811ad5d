namespace LubeController.Plant.Contacts;

/// <summary>The contact of a switch.</summary>
public enum SwitchContact
{
    /// <summary>The contact is open, level off, until the switch is actuated.</summary>
    NormallyOpen,

    /// <summary>The contact is closed, level on, until the switch is actuated.</summary>
    NormallyClosed,
}
