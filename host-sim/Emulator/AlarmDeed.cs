namespace LubeController.Emulator;

/// <summary>What a person does to what is shown of an alarm (ISA-18.2 / IEC 62682).</summary>
public enum AlarmDeed
{
    /// <summary>Hides it for a limited time.</summary>
    Shelve,

    /// <summary>Shows a shelved one again.</summary>
    Unshelve,

    /// <summary>Hides it until it is put into service again.</summary>
    TakeOutOfService,

    /// <summary>Puts it into service again.</summary>
    PutIntoService,
}
