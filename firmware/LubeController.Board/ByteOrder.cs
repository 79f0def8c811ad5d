namespace LubeController.Board;

/// <summary>Numbers in bytes, little endian.</summary>
internal static class ByteOrder
{
    public static void Put(byte[] bytes, int at, uint value)
    {
        bytes[at] = (byte)value;
        bytes[at + 1] = (byte)(value >> 8);
        bytes[at + 2] = (byte)(value >> 16);
        bytes[at + 3] = (byte)(value >> 24);
    }

    public static uint Get(byte[] bytes, int at) =>
        (uint)(bytes[at] | (bytes[at + 1] << 8) | (bytes[at + 2] << 16) | (bytes[at + 3] << 24));

    public static bool AreErased(byte[] bytes, int at, int length)
    {
        for (int index = at; index < at + length; index++)
        {
            if (bytes[index] != 0xFF)
                return false;
        }

        return true;
    }
}
