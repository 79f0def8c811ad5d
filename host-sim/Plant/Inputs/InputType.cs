namespace LubeController.Plant.Inputs;

/// <summary>Types of digital inputs for 24 V DC, current sinking, of IEC 61131-2.</summary>
public enum InputType
{
    /// <summary>Type 1: for contacts and three-wire switches.</summary>
    Type1,

    /// <summary>Type 2: draws enough for any two-wire switch.</summary>
    Type2,

    /// <summary>Type 3: for contacts, three-wire switches and two-wire switches of low residual current.</summary>
    Type3,
}
